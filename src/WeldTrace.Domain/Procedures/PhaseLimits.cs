using System.Globalization;
using WeldTrace.Domain.Welding;

namespace WeldTrace.Domain.Procedures;

/// <summary>Limits of a parameter in one phase other than the traverse, in the unit of its window.</summary>
/// <param name="Phase">One of <see cref="Words"/>.</param>
/// <param name="Lower">Least permitted value.</param>
/// <param name="Upper">Greatest permitted value.</param>
public sealed record PhaseLimits(string Phase, decimal Lower, decimal Upper)
{
    /// <summary>Longest text of all phases.</summary>
    public const int LongestText = 120;

    private const string Between = " to ";

    /// <summary>Phases that limits can be laid down for.</summary>
    public static IReadOnlyList<string> Words { get; } =
    [LoggedPhase.Plunge, LoggedPhase.Dwell, LoggedPhase.Exit];

    /// <inheritdoc/>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Phase} {Lower}{Between}{Upper}");

    /// <summary>All of them as one text, such as <c>plunge 2 to 12; dwell 8 to 11</c>.</summary>
    public static string Text(IEnumerable<PhaseLimits>? limits) => string.Join("; ", limits ?? []);

    /// <summary>Reads such a text; null when it is none.</summary>
    public static IReadOnlyList<PhaseLimits>? Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var parts = text.Split(
            ';',
            StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries
        );
        PhaseLimits[] read = [.. parts.Select(One).OfType<PhaseLimits>()];
        return read.Length == parts.Length && read.DistinctBy(p => p.Phase).Count() == read.Length
            ? read
            : null;
    }

    private static PhaseLimits? One(string text)
    {
        var (word, numbers) = text.Split(' ', 2) is [var first, var rest]
            ? (first, rest)
            : ("", "");
        return
            Words.Contains(word)
            && numbers.Split(Between) is [var low, var high]
            && TryNumber(low, out var lower)
            && TryNumber(high, out var upper)
            ? new(word, lower, upper)
            : null;
    }

    private static bool TryNumber(string text, out decimal number) =>
        decimal.TryParse(
            text.Trim(),
            NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign,
            CultureInfo.InvariantCulture,
            out number
        );
}
