using System.Globalization;

namespace WeldTrace.Documents.Layout;

/// <summary>The foot of each page: document and site, time of printing, page x of y.</summary>
internal static class Footer
{
    public static void Draw(Canvas canvas, DocumentSettings settings, int page, int pages) =>
        canvas.Decoration(() =>
        {
            const double y = PageGeometry.Footer;
            canvas.Rule(PageGeometry.Left, y - 5, PageGeometry.Right, y - 5, 0.4, Tone.Rule);
            var number = string.Create(CultureInfo.InvariantCulture, $"page {page} of {pages}");
            canvas.TextRight(number, Styles.Small, PageGeometry.Right, y);
            var room = PageGeometry.TextWidth - Styles.Small.Width(number) - 12;
            var first = $"{settings.Title} · {settings.Stamp.SiteName}";
            Line(canvas, first, y, room);
            Line(canvas, Printed(settings.Stamp), y + Styles.Small.Leading, room);
            if (settings.Stamp.Ledger is { } ledger)
            {
                // The root is printed whole, under the page number too, so that paper can be held against the ledger.
                Line(
                    canvas,
                    Signed(ledger, settings.Stamp.TimeZone),
                    y + (2 * Styles.Small.Leading),
                    PageGeometry.TextWidth
                );
            }
        });

    private static void Line(Canvas canvas, string text, double y, double room) =>
        canvas.Text(LineBreaker.Fit(text, Styles.Small, room), Styles.Small, PageGeometry.Left, y);

    private static string Signed(SignedLedger ledger, TimeZoneInfo zone) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"Ledger signed {SiteTime.Minute(ledger.SignedAt, zone)}: {ledger.Entries} entries, root {ledger.RootHex}"
        );

    private static string Printed(DocumentStamp stamp) =>
        $"Printed {SiteTime.Minute(stamp.PrintedAt, stamp.TimeZone)}"
        + $" ({stamp.TimeZone.Id}) by {stamp.PrintedBy}";
}
