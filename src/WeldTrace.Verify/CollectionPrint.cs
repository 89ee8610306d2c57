using System.Globalization;

namespace WeldTrace.Verify;

/// <summary>Tells on a terminal what was found in a collection, a line for each vessel.</summary>
internal static class CollectionPrint
{
    public static void Write(CollectionReport report, bool keyWasNamed, TextWriter output)
    {
        var good = report.Bundles.Count(b => b.Report.IsVerified);
        output.WriteLine(
            report.IsVerified
                ? $"verified: {Vessels(good)}"
                : $"NOT VERIFIED: {report.Problems.Count} problems of the collection,"
                    + $" {good} of {Vessels(report.Contents?.Bundles.Count ?? 0)} verified by themselves"
        );
        BundlePrint.WriteProblems(report.Problems, report.Notes, "  ", output);
        foreach (var bundle in report.Bundles)
        {
            WriteBundle(bundle, output);
        }
        BundlePrint.WriteRows(
            [
                ("what", report.Contents?.Title),
                ("site", report.Contents?.SiteName),
                ("made at", BundlePrint.Time(report.Contents?.MadeAt)),
                ("key", report.Fingerprint),
            ],
            output
        );
        if (report.IsVerified)
        {
            BundlePrint.WriteKeyAdvice(keyWasNamed, output);
        }
    }

    private static void WriteBundle(CollectedReport bundle, TextWriter output)
    {
        var (word, report) = (
            bundle.Report.IsVerified ? "verified" : "NOT VERIFIED",
            bundle.Report
        );
        output.WriteLine(
            PlainText.Of(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"  {word} {bundle.VesselSerial} ({bundle.Path}, {report.Entries} entries)"
                )
            )
        );
        BundlePrint.WriteProblems(report.Problems, report.Notes, "    ", output);
    }

    private static string Vessels(int count) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{count} {(count == 1 ? "vessel" : "vessels")}"
        );
}
