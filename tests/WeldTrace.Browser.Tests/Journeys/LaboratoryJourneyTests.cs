using System.Globalization;
using UglyToad.PdfPig;
using WeldTrace.Web.Demo;

namespace WeldTrace.Browser.Tests.Journeys;

/// <summary>Laboratory tests entered by the inspector; every reading is invented.</summary>
public sealed class LaboratoryJourneyTests(SiteFixture site)
{
    [Theory]
    [InlineData("TransverseTensile", "Mean joint efficiency")]
    [InlineData("RootBend", "B1: Bend angle")]
    [InlineData("Hardness", "Smallest hardness")]
    public async Task Test_EnteredForAVessel_IsJudgedSignedAndPrinted(string kind, string shown)
    {
        await using var visitor = await Visitor.SignInAsync(site, DemoPeople.Inspector);
        await visitor.GoToAsync($"/tests/laboratory/new/{kind}?vessel=NR10-0004");
        await visitor.FillAsync("Mark of the sample", $"P-{kind}");
        await visitor.FillAsync("Place on the weld", "60 to 180 mm from the start");
        await visitor.FillAsync("Welded on", DaysAgo(9));
        await visitor.FillAsync("Its edition", "2012");
        await visitor.FillAsync("Acceptance standard", "Design specification DS-10");
        await visitor.FillAsync("Its edition and level", "revision B");
        await visitor.FillAsync("Tested on", DaysAgo(1));
        await visitor.FillAsync("Testing machine", kind == "Hardness" ? "HT-01" : "TM-02");
        await FillReadingsAsync(visitor, kind);
        await visitor.FindsAccessibleAsync();
        await visitor.SignAsync("Sign and enter");
        await visitor.SeesAsync(shown);
        await visitor.FindsAccessibleAsync();

        var report = await visitor.DownloadAsync(
            new Uri(visitor.Page.Url).AbsolutePath + "/report.pdf"
        );
        using var pdf = PdfDocument.Open(report);
        var text = string.Join('\n', pdf.GetPages().Select(p => p.Text));
        Assert.Contains("Laboratory report", text, StringComparison.Ordinal);
        Assert.Contains("MT2-0220", text, StringComparison.Ordinal);
        var vessel = PdfText.Letters(
            PdfText.Of(await visitor.DownloadAsync("/vessels/NR10-0004/certificate.pdf"))
        );
        Assert.Contains("Laboratorytests", vessel, StringComparison.Ordinal);
        Assert.Contains($"P{kind}", vessel, StringComparison.Ordinal);
    }

    private static string DaysAgo(int days) =>
        TimeProvider
            .System.GetUtcNow()
            .AddDays(-days)
            .ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static async Task FillReadingsAsync(Visitor visitor, string kind)
    {
        switch (kind)
        {
            case "TransverseTensile":
                await visitor.FillAsync("Least strength", "180");
                await visitor.FillAsync("Where the limit stands", "DS-10, section 6");
                await visitor.FillAsync("Strength of the parent", "310");
                await visitor.ChooseAsync("What that strength is", "SamePlate");
                await visitor.FillAsync("Standard uncertainty of the force", "0.05");
                await visitor.FillAsync("Standard uncertainty of width and thickness", "0.02");
                await SpecimenAsync(
                    visitor,
                    "T1",
                    [("width", "12.50"), ("thickness", "5.98"), ("highest force", "15.60")]
                );
                await visitor.ChooseAsync("Specimen 1, where it broke", "Nugget");
                break;
            case "RootBend":
                await visitor.FillAsync("Largest former", "36");
                await visitor.FillAsync("Longest crack permitted", "3");
                await visitor.FillAsync("Where the limits stand", "DS-10, section 6");
                await visitor.FillAsync("Distance of the rollers", "50");
                await SpecimenAsync(
                    visitor,
                    "B1",
                    [
                        ("width", "25"),
                        ("thickness", "6"),
                        ("former", "36"),
                        ("angle", "180"),
                        ("longest crack", "0"),
                    ]
                );
                break;
            default:
                await visitor.FillAsync("Scale", "HV 5");
                await visitor.FillAsync("Dwell", "12");
                await visitor.FillAsync("Distance of the row from the surface", "2");
                await visitor.FillAsync("Hardness of the parent", "108");
                await visitor.FillAsync("Reference block", "block 112");
                await visitor.FillAsync("Indentations", "-12 107\n-6 72\n0 82\n6 70\n12 106");
                break;
        }
    }

    private static async Task SpecimenAsync(
        Visitor visitor,
        string mark,
        IReadOnlyList<(string Label, string Value)> values
    )
    {
        await visitor.FillAsync("Specimen 1, mark", mark);
        foreach (var (label, value) in values)
        {
            await visitor.FillAsync($"Specimen 1, {label}", value);
        }
    }
}
