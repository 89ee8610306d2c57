using WeldTrace.Web.Demo;

namespace WeldTrace.Browser.Tests.Journeys;

/// <summary>Production lots and their samples; a finding from its report over containment and repair to closed.</summary>
public sealed class LotJourneyTests(SiteFixture site)
{
    [Fact]
    public async Task Samples_AreChosenBySignature_BeforeAnythingIsWelded()
    {
        await using var engineer = await Visitor.SignInAsync(site, DemoPeople.Engineer);
        await engineer.GoToAsync("/lots");
        await engineer.FindsAccessibleAsync();
        await engineer.FollowAsync("PL-26-07");
        await engineer.SeesAsync("Nothing of this lot is welded before they are.");

        await using var visitor = await Visitor.SignInAsync(site, DemoPeople.Inspector);
        await visitor.GoToAsync(new Uri(engineer.Page.Url).AbsolutePath);
        await visitor.SeesAsync("By the design's way of choosing");
        await visitor.FindsAccessibleAsync();
        await visitor.SignAsync("Sign the choice");
        await visitor.SeesAsync("awaits its samples");
        await visitor.FindsAccessibleAsync();

        await visitor.GoToAsync("/vessels/NR10-0014");
        await visitor.SeesAsync("Sacrificed as section sample of the lot.");
    }

    [Fact]
    public async Task Lot_WhoseSamplePassed_IsAcceptedWithItsStatement()
    {
        await using var visitor = await Visitor.SignInAsync(site, DemoPeople.QualityManager);
        await visitor.GoToAsync("/lots?state=Sampling");
        await visitor.FollowAsync("PL-26-06");
        await visitor.SeesAsync("1 of 1 samples met their limits");
        await visitor.SeesAsync("Proof: 1 of 1 vessels passed");
        await visitor
            .Page.GetByText("How was this worked out", new() { Exact = false })
            .First.ClickAsync();
        await visitor.FindsAccessibleAsync();
        await visitor.SignForGoodAsync("Sign and accept the lot");
        await visitor.SeesAsync("Accepted by");
        await visitor.FindsAccessibleAsync();
    }

    [Fact]
    public async Task Lot_WhoseSamplesWereBurst_SaysWhatIsShown()
    {
        await using var visitor = await Visitor.SignInAsync(site, DemoPeople.Inspector);
        await visitor.GoToAsync("/lots?state=Sampling");
        await visitor.FollowAsync("PL-26-08");
        await visitor.SeesAsync("3 of 3 samples reached the 80 bar");
        await visitor.SeesAsync("3 bursts, mean");
        await visitor.FindsAccessibleAsync();
    }

    [Fact]
    public async Task LaboratorySample_ThatFails_HoldsEveryVesselOfItsLot()
    {
        await using var shop = await OwnWorkshop.OpenAsync(site);
        await using var visitor = await shop.SignInAsync(DemoPeople.Inspector);
        await visitor.GoToAsync("/tests/laboratory/new/Hardness");
        await visitor.FillAsync("Production lot (may be left empty)", "PL-26-99");
        await visitor.FillAsync("Joint", "J1");
        await visitor.FillAsync("Mark of the sample", "H-1");
        await visitor.FillAsync("Place on the weld", "across J1 at 120°");
        await visitor.FillAsync("Welding procedure with its revision", "WP-101 B");
        await visitor.FillAsync("Welded on", DaysAgo(9));
        await visitor.FillAsync("Its edition", "2012");
        await visitor.FillAsync("Acceptance standard", "Design specification DS-10");
        await visitor.FillAsync("Its edition and level", "revision B");
        await visitor.FillAsync("Tested on", DaysAgo(1));
        await visitor.FillAsync("Testing machine", "HT-01");
        await visitor.FillAsync("Scale", "HV 5");
        await visitor.FillAsync("Dwell", "12");
        await visitor.FillAsync("Distance of the row from the surface", "2");
        await visitor.FillAsync("Hardness of the parent", "108");
        await visitor.FillAsync("Least hardness (may be left empty)", "75");
        await visitor.FillAsync("Reference block", "block 112");
        await visitor.FillAsync("Indentations", "-12 107\n-6 72\n0 82\n6 70\n12 106");
        await visitor.SignAsync("Sign and enter");
        await visitor.SeesAsync("No vessel belongs to production lot PL-26-99");
        await visitor.FillAsync("Production lot (may be left empty)", "PL-26-08");
        await visitor.SignAsync("Sign and enter");
        await visitor.SeesAsync("Smallest hardness");

        await visitor.GoToAsync("/lots?state=Failed");
        await visitor.FollowAsync("PL-26-08");
        await visitor.SeesAsync("every vessel of the lot is on hold");
        await visitor.SeesAsync("Laboratory: 0 of 1 tests passed");
        await visitor.FindsAccessibleAsync();
        await visitor.GoToAsync("/vessels/NR10-0024");
        await visitor.SeesAsync("on hold");
        await visitor.SeesAsync("Laboratory sample H-1");
    }

    private static string DaysAgo(int days) =>
        TimeProvider
            .System.GetUtcNow()
            .AddDays(-days)
            .ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);

    [Fact]
    public async Task Finding_IsContained_DecidedAndClosedByAnother()
    {
        await using var inspector = await Visitor.SignInAsync(site, DemoPeople.Inspector);
        await inspector.GoToAsync("/vessels/NR10-0018/findings/new");
        await inspector.FillAsync("What was found", "Dent beside the joint");
        await inspector.PressAsync("Report, and hold the vessel");
        await inspector.SeesAsync("Which other vessels may be affected");
        var address = new Uri(inspector.Page.Url).AbsolutePath;
        await inspector.FollowAsync("Which other vessels may be affected");
        await inspector.SeesAsync("NR10-0017");
        await inspector.FindsAccessibleAsync();
        await inspector.FillAsync("Or only these serials (may be left empty)", "NR10-9999");
        await inspector.FillAsync("Why these, or why none", "Stood on the same rack.");
        await inspector.SignAsync("Sign and hold");
        await inspector.SeesAsync("Not in the list: NR10-9999");
        await inspector.FillAsync("Or only these serials (may be left empty)", "NR10-0019");
        await inspector.SignAsync("Sign and hold");
        await inspector.SeesAsync("1 held (NR10-0019)");

        await using var quality = await Visitor.SignInAsync(site, DemoPeople.QualityManager);
        await quality.GoToAsync("/vessels/NR10-0019");
        await quality.SeesAsync("Stopped by a finding");
        await quality.GoToAsync(address);
        await quality.Page.GetByLabel("repair", new() { Exact = true }).CheckAsync();
        await quality.FillAsync("Reason", "Not deeper than a scribed line, away from the joint.");
        await quality.SignAsync("Sign the decision");
        await quality.SeesAsync("Choose the qualified and released procedure");
        await quality.Page.GetByLabel("use as is", new() { Exact = true }).CheckAsync();
        await quality.SignAsync("Sign the decision");
        await quality.SeesAsync("Verify that the decision was carried out");
        await quality.FindsAccessibleAsync();
        await quality.FillAsync("What you verified", "Depth measured; nothing to mend.");
        await quality.SignForGoodAsync("Close the finding");
        await quality.SeesAsync("closed");
        Assert.StartsWith(
            "%PDF",
            Text(await quality.DownloadAsync($"{address}/report.pdf")),
            StringComparison.Ordinal
        );
        await quality.GoToAsync("/findings/figures");
        await quality.SeesAsync("Repair per weld length");
        await quality.FindsAccessibleAsync();
    }

    private static string Text(byte[] bytes) =>
        System.Text.Encoding.Latin1.GetString(bytes.AsSpan(0, Math.Min(8, bytes.Length)));
}
