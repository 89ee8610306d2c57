using System.Globalization;
using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.Book;

/// <summary>The first page of a history book: the vessel, the QR code, the ledger, and how to read and check what follows.</summary>
internal static class BookCover
{
    public static IEnumerable<Block> Blocks(HistoryBookModel model)
    {
        Block[] left =
        [
            new Paragraph(model.Stamp.SiteName, Styles.Site),
            new Heading($"History of vessel {model.Serial}", 1),
            new Paragraph("Everything on record about it, and what it rests on."),
            Grid.Of(
                [
                    GridItem.Of("State", model.State),
                    .. model.Particulars.Select(GridItem.Of),
                    new("Printed", SiteTime.Minute(model.Stamp.PrintedAt, model.Stamp.TimeZone)),
                    new("Printed by", model.Stamp.PrintedBy),
                ],
                pairs: 1
            ),
        ];
        yield return new SideBySide(new Stack(left), RecordLink.Of(model.RecordAddress), 0.7);
        if (model.Notices.Count > 0)
        {
            yield return new Notice("To be looked at", model.Notices, MarkShape.Triangle);
        }

        yield return Cautions.ForVessel();
        yield return new Heading("How to read it", 2);
        yield return new Paragraph(
            $"All times are local to {model.Stamp.TimeZone.Id}. A record that is struck through was corrected or taken back; the reason stands below it."
        );
        yield return new Paragraph(
            "This book is made from the records at the time of printing. The records themselves, their signatures and the proofs that nothing was changed afterwards are in the history bundle, which is checked without this site."
        );
        yield return new Paragraph(Ledger(model.Stamp));
    }

    private static string Ledger(DocumentStamp stamp) =>
        stamp.Ledger is { } ledger
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"The ledger of the site was signed last on {SiteTime.Minute(ledger.SignedAt, stamp.TimeZone)} with {ledger.Entries} entries; its root is {ledger.RootHex}."
            )
            : "The ledger of the site was not signed yet.";
}
