using WeldTrace.Documents.Drawings;
using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.Traveler;

/// <summary>One weld run: who, with what, windows beside what was observed, excursions, chart.</summary>
internal static class WeldRunPart
{
    public static IEnumerable<Block> Blocks(WeldRunSheet run, DocumentStamp stamp)
    {
        var struck = run.Superseded is not null;
        yield return new Heading(
            $"Run {run.Reference}: joint {run.Joint}, pass {run.Pass}",
            3,
            run.State,
            struck
        );
        foreach (var note in Correction(run.Superseded, stamp))
        {
            yield return note;
        }

        yield return Grid.Of(Facts(run, stamp), struck: struck);
        if (run.Checks.Count > 0)
        {
            yield return new Heading("Checks before welding, ISO 25239-5:2020 4.12.2", 4);
            yield return CheckTable(run.Checks, struck);
        }

        if (run.Windows.Count > 0)
        {
            yield return new Heading(
                "Windows of the procedure and observed values of the traverse",
                4
            );
            yield return WindowTable(run.Windows, struck);
        }

        if (run.PhaseFigures.Count > 0)
        {
            yield return new Heading("Figures of each phase", 4);
            foreach (var block in PhaseFigureTable.Blocks(run, struck))
            {
                yield return block;
            }
        }

        foreach (var block in SeamBlocks(run, stamp, struck))
        {
            yield return block;
        }

        if (run.Chart is { } chart)
        {
            yield return new Figure(
                new ProcessLogDrawing(chart),
                "Grey band: window of the procedure, dotted: set point. Hatched and numbered: excursion."
            );
        }
    }

    public static IEnumerable<Block> Correction(Correction? correction, DocumentStamp stamp) =>
        CorrectionText.Note(correction, stamp.TimeZone) is { } note
            ? [new Paragraph(note, Styles.Note)]
            : [];

    private static IEnumerable<GridItem> Facts(WeldRunSheet run, DocumentStamp stamp) =>
        [
            new("Operator", run.Operator),
            new("Machine", run.Machine),
            new("Procedure", run.ProcedureRevision),
            new("Tool", run.Tool),
            new("Start", Time(run.StartedAt, stamp)),
            new("End", Time(run.EndedAt, stamp)),
            new("Path travelled", QuantityText.Path(run.Travelled, stamp.Units)),
            .. run.Particulars.Select(GridItem.Of),
        ];

    private static string? Time(DateTimeOffset? instant, DocumentStamp stamp) =>
        instant is { } at ? SiteTime.Minute(at, stamp.TimeZone) : null;

    private static Table CheckTable(IReadOnlyList<CheckLine> checks, bool struck)
    {
        TableColumn[] columns = [new("Check", 26), new("Answer", 60), new("By", 16)];
        var rows = checks.Select(line => new TableRow([
            new Cell(line.Title) { IsHead = true },
            line.Answer,
            line.By,
        ])
        {
            Struck = struck,
        });
        return new Table(columns, [.. rows]);
    }

    private static Table WindowTable(IReadOnlyList<WindowLine> windows, bool struck)
    {
        TableColumn[] columns =
        [
            new("Parameter", 24),
            new("Unit", 12),
            new("Set point", 10, IsNumber: true),
            new("Lower", 10, IsNumber: true),
            new("Upper", 10, IsNumber: true),
            new("Least", 10, IsNumber: true),
            new("Mean", 10, IsNumber: true),
            new("Greatest", 10, IsNumber: true),
            new("Verdict", 16),
        ];
        var rows = windows.Select(line => new TableRow([
            new Cell(line.Parameter) { IsHead = true },
            line.Unit,
            line.SetPoint,
            line.Lower,
            line.Upper,
            line.ObservedMinimum,
            line.ObservedMean,
            line.ObservedMaximum,
            Cell.Of(line.Verdict),
        ])
        {
            Struck = struck,
        });
        return new Table(columns, [.. rows]);
    }

    private static Block[] SeamBlocks(WeldRunSheet run, DocumentStamp stamp, bool struck)
    {
        Block[] beside =
        [
            .. ExcursionTable.Blocks(run.Excursions, stamp.Units, struck),
            .. PhaseBlocks(run.Phases, struck),
        ];
        return (run.Seam, beside.Length) switch
        {
            (null, _) => beside,
            ({ } seam, 0) => [SeamFigure(seam)],
            ({ } seam, _) => [new SideBySide(SeamFigure(seam), new Stack(beside), 0.3)],
        };
    }

    private static Figure SeamFigure(SeamPlan seam) =>
        new(
            new SeamDrawing(seam),
            string.Join(
                ' ',
                [
                    "Seam from the shoulder side, datum at the top.",
                    .. seam.Points.Select(p =>
                        FormattableString.Invariant(
                            $"{p.Letter}: {p.What}, {p.Along.Degrees:0.#}°."
                        )
                    ),
                ]
            ),
            widest: 150
        );

    private static IEnumerable<Block> PhaseBlocks(IReadOnlyList<PhaseLine> phases, bool struck)
    {
        if (phases.Count == 0)
        {
            return [];
        }

        TableColumn[] columns =
        [
            new("Phase", 40),
            new("From", 20, IsNumber: true),
            new("To", 20, IsNumber: true),
            new("Lasted", 20, IsNumber: true),
        ];
        var rows = phases.Select(phase => new TableRow([
            new Cell(phase.Name) { IsHead = true },
            QuantityText.Seconds(phase.From),
            QuantityText.Seconds(phase.To),
            QuantityText.Seconds(phase.To - phase.From),
        ])
        {
            Struck = struck,
        });
        return [new Table(columns, [.. rows])];
    }
}
