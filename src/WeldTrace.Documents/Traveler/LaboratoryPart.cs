using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.Traveler;

/// <summary>One laboratory test; its own report has the readings.</summary>
public sealed record LaboratoryLine(
    string Test,
    string Sample,
    string Place,
    string TestedOn,
    string Tester,
    StateMark Verdict,
    string Sentence
);

/// <summary>Laboratory tests, a line each.</summary>
internal static class LaboratoryPart
{
    public static IEnumerable<Block> Blocks(IReadOnlyList<LaboratoryLine> lines)
    {
        if (lines.Count == 0)
        {
            yield break;
        }

        TableColumn[] columns =
        [
            new("Test", 22),
            new("Sample", 18),
            new("Place on the weld", 28),
            new("Tested", 14),
            new("Tester", 18),
            new("Verdict", 16),
        ];
        var rows = lines.Select(line => new TableRow([
            new Cell(line.Test) { IsHead = true },
            line.Sample,
            line.Place,
            line.TestedOn,
            line.Tester,
            Cell.Of(line.Verdict),
        ])
        {
            Note = line.Sentence,
        });
        yield return new Table(columns, [.. rows]);
    }
}
