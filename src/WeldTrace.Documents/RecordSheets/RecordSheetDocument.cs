using WeldTrace.Documents.Layout;
using WeldTrace.Documents.Traveler;

namespace WeldTrace.Documents.RecordSheets;

/// <summary>The order of a sheet's parts.</summary>
internal static class RecordSheetDocument
{
    private const double StateShare = 18;

    public static IReadOnlyList<Block> Blocks(RecordSheetModel model) =>
        [
            .. Head(model),
            .. Parts(model.Parts),
            .. model.Signatures is { } signatures
                ? SignaturePart.Blocks(signatures, [], model.Stamp)
                : [],
        ];

    /// <summary>Parts under headings of their own.</summary>
    public static IEnumerable<Block> Parts(IEnumerable<SheetPart> parts) =>
        parts.SelectMany(p => Part.Of(p.Title, Blocks(p)));

    private static IEnumerable<Block> Head(RecordSheetModel model)
    {
        Block[] left =
        [
            new Paragraph(model.Stamp.SiteName, Styles.Site),
            new Heading(model.Title, 1),
            new Paragraph(model.Subtitle),
            Grid.Of(
                [GridItem.Of("State", model.State), .. model.Particulars.Select(GridItem.Of)],
                pairs: 1
            ),
        ];
        yield return new SideBySide(new Stack(left), RecordLink.Of(model.RecordAddress), 0.7);
        if (model.Notices.Count > 0)
        {
            yield return new Notice("Not complete", model.Notices, MarkShape.Triangle);
        }

        yield return Cautions.ForVessel();
        foreach (var notice in UncheckedNotice.Of(model.UncheckedLimits))
        {
            yield return notice;
        }
    }

    private static IEnumerable<Block> Blocks(SheetPart part)
    {
        foreach (var sentence in part.Sentences)
        {
            yield return new Paragraph(sentence);
        }

        if (part.Values.Count > 0)
        {
            yield return Grid.Of(part.Values.Select(GridItem.Of), pairs: 1);
        }

        if (part.Table is { Rows.Count: > 0 } table)
        {
            yield return TableOf(table);
        }
    }

    private static Table TableOf(SheetTable table)
    {
        var hasState = table.Rows.Any(r => r.State is not null);
        return new Table(
            [
                .. table.Heads.Select(h => new TableColumn(h.Head, h.Share)),
                .. hasState ? [new TableColumn("State", StateShare)] : Array.Empty<TableColumn>(),
            ],
            [
                .. table.Rows.Select(row => new TableRow([
                    .. row.Cells.Select(
                        (text, i) => i == 0 ? new Cell(text) { IsHead = true } : new Cell(text)
                    ),
                    .. !hasState ? Array.Empty<Cell>()
                    : row.State is { } state ? [Cell.Of(state)]
                    : [new Cell(null)],
                ])),
            ]
        );
    }
}
