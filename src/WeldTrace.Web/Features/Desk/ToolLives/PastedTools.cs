using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.ToolLife;

namespace WeldTrace.Web.Features.Desk.ToolLives;

/// <summary>Tools that were pasted as text: one a line, a length and whether the tool failed there.</summary>
internal static class PastedTools
{
    private const int MostTools = 400;

    private static readonly string[] Failed = ["failed", "fail", "broken", "worn", "f"];

    private static readonly string[] Censored =
    [
        "in use",
        "ok",
        "good",
        "retired",
        "stored",
        "censored",
        "c",
    ];

    private static readonly char[] Separators = [' ', '\t', ';'];

    /// <summary>Reads the tools; what cannot be read is said line by line.</summary>
    public static IReadOnlyList<LifeRecord> Read(DeskEntries entries, string name)
    {
        var unit = Components.Figures.SiteUnit.For<Length>(
            entries.Units,
            Components.Figures.UnitScale.Path
        );
        List<LifeRecord> records = [];
        var number = 0;
        foreach (var line in entries.Text(name).Split('\n').Select(l => l.Trim()))
        {
            number++;
            if (line.Length > 0 && ReadLine(line) is { } tool && tool.Length > 0)
            {
                records.Add(new(Length.FromSi(unit.ToSi(tool.Length)), tool.Failed));
            }
            else if (line.Length > 0)
            {
                entries.Refuse(
                    name,
                    FormattableString.Invariant(
                        $"Tools, line {number}: '{DeskEntries.Shorten(line)}' can't be read; write a length in {unit.Symbol} above zero, then 'failed' or 'in use'."
                    )
                );
            }
        }

        if (records.Count == 0 && entries.AreClean)
        {
            entries.Refuse(
                name,
                "Tools: none is given; write one a line, its length and 'failed' or 'in use'."
            );
        }

        if (records.Count > MostTools)
        {
            entries.Refuse(
                name,
                FormattableString.Invariant($"Tools: more than {MostTools} are given.")
            );
        }

        return records;
    }

    private static (double Length, bool Failed)? ReadLine(string line)
    {
        var cut = line.IndexOfAny(Separators);
        if (cut < 0 || !DeskField.TryRead(line[..cut], out var length) || length > 1e6)
        {
            return null;
        }

        var state = line[cut..].Trim([.. Separators, ',']).ToLowerInvariant();
        return Failed.Contains(state) ? (length, true)
            : Censored.Contains(state) ? (length, false)
            : null;
    }
}
