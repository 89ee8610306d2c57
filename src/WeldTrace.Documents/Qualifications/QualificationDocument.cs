using WeldTrace.Documents.Layout;
using WeldTrace.Documents.Procedures;
using WeldTrace.Documents.Traveler;

namespace WeldTrace.Documents.Qualifications;

/// <summary>The order of a qualification record's parts.</summary>
internal static class QualificationDocument
{
    public static string Title(QualificationModel model) => $"Qualification record {model.Number}";

    public static IReadOnlyList<Block> Blocks(QualificationModel model) =>
        [
            .. Head(model),
            .. Range(model),
            .. Part.Of("Test pieces", model.Pieces.SelectMany(Piece)),
            .. Results(model.Results),
            .. Part.Of(
                "Photographs",
                model.Photographs.Select(photograph => new Picture(photograph))
            ),
            .. Part.Of("Procedure as welded", model.Procedure.SelectMany(Group)),
            .. SignaturePart.Blocks(model.Signatures, [], model.Stamp),
            .. SourceTable.Blocks(model.Sources),
        ];

    private static IEnumerable<Block> Head(QualificationModel model)
    {
        GridItem[] items =
        [
            GridItem.Of("State", model.State),
            .. model.Particulars.Select(GridItem.Of),
        ];
        Block[] left =
        [
            new Paragraph(model.Stamp.SiteName, Styles.Site),
            new Heading(Title(model), 1),
            new Paragraph("Welding procedure qualification record (WPQR), friction stir welding"),
            Grid.Of(items, pairs: 1),
        ];
        yield return new SideBySide(new Stack(left), RecordLink.Of(model.RecordAddress), 0.7);
        if (model.Missing.Count > 0)
        {
            yield return new Notice("Not complete", [.. model.Missing], MarkShape.Triangle);
        }

        yield return Cautions.ForWelding();
        foreach (var notice in UncheckedNotice.Of(model.UncheckedLimits))
        {
            yield return notice;
        }
    }

    private static IEnumerable<Block> Range(QualificationModel model)
    {
        TableColumn[] columns = [new("Variable", 26), new("Covered", 46), new("Rule", 32)];
        var rows = model.Range.Select(line => new TableRow([
            new Cell(line.Variable) { IsHead = true },
            line.Covered,
            line.Rule,
        ]));
        return model.RangeSentence is null
            ? []
            : Part.Of(
                "Range of qualification",
                [new Paragraph(model.RangeSentence), new Table(columns, [.. rows])]
            );
    }

    private static IEnumerable<Block> Piece(PieceSheet piece)
    {
        yield return new Heading(piece.Title, 3);
        yield return Grid.Of([
            GridItem.Of("State", piece.State),
            .. piece.Particulars.Select(GridItem.Of),
        ]);
        if (piece.AsRun.Count == 0)
        {
            yield break;
        }

        TableColumn[] columns =
        [
            new("As actually run", 30),
            new("Unit", 14),
            new("Least", 14, IsNumber: true),
            new("Mean", 14, IsNumber: true),
            new("Greatest", 14, IsNumber: true),
        ];
        var rows = piece.AsRun.Select(line => new TableRow([
            new Cell(line.Parameter) { IsHead = true },
            line.Unit,
            line.Least,
            line.Mean,
            line.Greatest,
        ]));
        yield return new Table(columns, [.. rows]);
    }

    private static IEnumerable<Block> Results(IReadOnlyList<ResultRow> results)
    {
        TableColumn[] columns =
        [
            new("Specimen", 16),
            new("Test", 18),
            new("Place", 28),
            new("Verdict", 14),
            new("Result", 46),
        ];
        var rows = results.Select(line => new TableRow([
            new Cell(line.Specimen) { IsHead = true },
            line.Test,
            line.Place,
            Cell.Of(line.Verdict),
            line.Sentence,
        ])
        {
            Note = line.Details,
        });
        return results.Count == 0 ? [] : Part.Of("Results", [new Table(columns, [.. rows])]);
    }

    private static IEnumerable<Block> Group(ValueGroup group)
    {
        yield return new Heading(group.Heading, 3);
        yield return Grid.Of(group.Values.Select(GridItem.Of));
    }
}
