using System.Buffers;
using System.Collections.Frozen;

namespace WeldTrace.Web.Security;

/// <summary>
/// Whether a password comes down to one that everybody tries first (OWASP ASVS 5.0, 6.2.4). Those are shorter than this site takes, so
/// that what is left of them are repetitions, and digits and signs around them.
/// </summary>
public static class CommonPassword
{
    private const string Resource = "common-passwords.txt";

    private static readonly SearchValues<char> Digits = SearchValues.Create("0123456789");
    private static readonly Lazy<FrozenSet<string>> List = new(Read);

    /// <summary>How many there are.</summary>
    public static int Count => List.Value.Count;

    /// <summary>Whether one of the list is all there is to a password.</summary>
    /// <param name="plain">Its letters and digits, in lower case.</param>
    public static bool IsAllOf(string plain)
    {
        ArgumentNullException.ThrowIfNull(plain);
        return Stands(plain) || Stands(UnitOf(plain)) || Stands(UnitOf(CoreOf(plain)));
    }

    // The digits around it may belong to it, as in "abc123". Of digits alone nothing is cut: some four of them are always common.
    private static bool Stands(string text)
    {
        var (first, last) = LettersOf(text);
        return first < 0
            ? List.Value.Contains(text)
            : Enumerable
                .Range(0, first + 1)
                .Any(start =>
                    Enumerable
                        .Range(last + 1, text.Length - last)
                        .Any(end => List.Value.Contains(text[start..end]))
                );
    }

    private static string CoreOf(string text)
    {
        var (first, last) = LettersOf(text);
        return first < 0 ? text : text[first..(last + 1)];
    }

    private static (int First, int Last) LettersOf(string text) =>
        (text.AsSpan().IndexOfAnyExcept(Digits), text.AsSpan().LastIndexOfAnyExcept(Digits));

    /// <summary>The shortest text that gives another when it is repeated; the last time may be cut short.</summary>
    private static string UnitOf(string text)
    {
        for (var length = 1; length <= text.Length / 2; length++)
        {
            var unit = length;
            if (Enumerable.Range(unit, text.Length - unit).All(i => text[i] == text[i - unit]))
            {
                return text[..unit];
            }
        }

        return text;
    }

    private static FrozenSet<string> Read()
    {
        using var stream =
            typeof(CommonPassword).Assembly.GetManifestResourceStream(Resource)
            ?? throw new InvalidOperationException($"{Resource} is not in the program.");
        using StreamReader reader = new(stream);
        return reader
            .ReadToEnd()
            .Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            .ToFrozenSet(StringComparer.Ordinal);
    }
}
