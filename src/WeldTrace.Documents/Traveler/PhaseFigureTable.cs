using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.Traveler;

/// <summary>The figures of a run phase by phase.</summary>
internal static class PhaseFigureTable
{
    private static readonly TableColumn[] Columns =
    [
        new("Phase", 16),
        new("Parameter", 26),
        new("Unit", 12),
        new("Mean", 12, IsNumber: true),
        new("Std. dev.", 12, IsNumber: true),
        new("1 %", 12, IsNumber: true),
        new("Median", 12, IsNumber: true),
        new("99 %", 12, IsNumber: true),
        new("Drift", 12, IsNumber: true),
        new("End − start", 13, IsNumber: true),
    ];

    public static IEnumerable<Block> Blocks(WeldRunSheet run, bool struck)
    {
        if (run.PhaseFigures.Count == 0)
        {
            yield break;
        }

        yield return new Table(
            Columns,
            [
                .. run.PhaseFigures.Select(line => new TableRow([
                    new Cell(line.Phase) { IsHead = true },
                    line.Parameter,
                    line.Unit,
                    .. line.Figures.Select(figure => (Cell)figure),
                ])
                {
                    Struck = struck,
                }),
            ]
        );
        foreach (var note in run.PhaseNotes)
        {
            yield return new Paragraph(note);
        }
    }
}
