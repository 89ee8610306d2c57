using System.Globalization;
using WeldTrace.Domain.Archiving;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Ledger;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sites;
using WeldTrace.Domain.Vessels;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Archiving;

/// <summary>
/// Five years of ISO 3834-2 and ten of Directive 2014/68/EU are from memory; that repairs are kept for ever is NASA-STD-5006A, GWR 117.
/// </summary>
public sealed class VesselArchiveTests
{
    private static readonly DateOnly LastAct = new(2015, 2, 28);
    private static readonly string Hash = new('a', 64);
    private static readonly Guid Run = Guid.CreateVersion7();

    private static readonly ArchiveContents Contents = new([Hash], [new(Run, new string('b', 64))]);

    [Theory]
    [InlineData("2025-02-28", "retention")]
    [InlineData("2025-03-01", "")]
    public void Archive_OnlyOnTheDayAfterTheLongestRule(string today, string refused)
    {
        var archived = Write(
            Retention.Of(Scrapped(), Facts()),
            DateOnly.Parse(today, CultureInfo.InvariantCulture)
        );

        Assert.Equal(refused, string.Join(' ', archived.Refusals.Select(r => r.Code)));
    }

    [Fact]
    public void SiteThatKeepsLonger_Decides()
    {
        var retention = Retention.Of(Scrapped(), Facts() with { SiteYears = 30 });

        Assert.Equal(new DateOnly(2045, 2, 28), retention.KeptUntil);
        Assert.Equal("site settings", retention.Longest.Source);
        Assert.Equal(30, Retention.FewestYears(30));
        Assert.Equal(10, Retention.FewestYears(7));
    }

    [Fact]
    public void RepairedVessel_IsKeptForEver()
    {
        var retention = Retention.Of(Scrapped(), Facts() with { WasRepaired = true });

        Assert.Null(retention.KeptUntil);
        var refusal = Assert.Single(retention.Against(new DateOnly(2999, 1, 1)));
        Assert.Equal(("retention", "NASA-STD-5006A, GWR 117"), (refusal.Code, refusal.Source));
    }

    [Fact]
    public void VesselInWork_OrWithOpenFinding_IsNotArchived()
    {
        var vessel = SampleVessels.Planned(SampleDesigns.Released(), SampleMaterial.Bare());

        var refusals = Retention
            .Of(vessel, Facts() with { OpenFindings = 2 })
            .Against(new DateOnly(2030, 1, 1));

        Assert.Equal(["state", "findings"], refusals.Select(r => r.Code));
    }

    [Fact]
    public void Archive_ByTheQualityManager_NamesWhatLeft()
    {
        var archive = Accept.Value(
            Write(Retention.Of(Scrapped(), Facts()), new DateOnly(2030, 1, 1))
        );

        Assert.Equal(Contents.Files, archive.Files);
        Assert.Equal(Run, Assert.Single(archive.Logs).RunId);
        Assert.Equal(new DateOnly(2025, 2, 28), archive.KeptUntil);
        Assert.Contains("2014/68/EU", archive.Rule, StringComparison.Ordinal);
        Assert.Equal("vessel archived", Assert.Single(archive.PendingActs).Act);
    }

    [Fact]
    public void Archive_ByOthers_OrOfNothing_IsRefused()
    {
        var retention = Retention.Of(Scrapped(), Facts());
        var late = new DateOnly(2030, 1, 1);

        Assert.False(Write(retention, late, actor: SamplePeople.Engineer).IsAccepted);
        Assert.False(Write(retention, late, actor: SamplePeople.Auditor).IsAccepted);
        var empty = Write(retention, late, new ArchiveContents([], []));
        Assert.Equal("contents", Assert.Single(empty.Refusals).Code);
    }

    [Theory]
    [InlineData(9, "")]
    [InlineData(10, "bundle")]
    public void Bundle_ThatDoesNotKnowTheNewestEntry_IsRefused(long lastEntry, string refused)
    {
        var archived = Write(
            Retention.Of(Scrapped(), Facts()),
            new DateOnly(2030, 1, 1),
            lastEntry: lastEntry
        );

        Assert.Equal(refused, string.Join(' ', archived.Refusals.Select(r => r.Code)));
    }

    [Fact]
    public void Bundle_OfAnotherVessel_IsRefused()
    {
        var archived = Write(
            Retention.Of(Scrapped(), Facts()),
            new DateOnly(2030, 1, 1),
            bundleOf: Guid.CreateVersion7()
        );

        Assert.Equal("bundle", Assert.Single(archived.Refusals).Code);
    }

    [Fact]
    public void Contents_ThatABundleDoesNotHoldWithTheSameHash_AreNamed()
    {
        Assert.Empty(Contents.MissingFrom(Manifest(Hash, Contents.Logs[0].Hash)));

        var missing = Contents.MissingFrom(Manifest(new string('c', 64), Hash));
        Assert.Equal(2, missing.Count);
        Assert.Contains(Hash, missing[0].Sentence, StringComparison.Ordinal);
        Assert.Contains($"{Run}", missing[1].Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(4, false)]
    [InlineData(5, true)]
    [InlineData(100, true)]
    [InlineData(101, false)]
    [InlineData(null, true)]
    public void Site_KeepsRecordsForYearsWithinReason(int? years, bool isAccepted)
    {
        var site = Accept.Value(
            Site.SetUp(
                "Works",
                "Etc/UTC",
                UnitSystem.Metric,
                false,
                SamplePeople.Engineer,
                SampleTime.Start
            )
        );

        var outcome = site.KeepRecordsFor(years, SamplePeople.Engineer, SampleTime.Start);

        Assert.Equal(isAccepted, outcome.IsAccepted);
        Assert.Equal(isAccepted ? years : null, site.RetentionYears);
    }

    private static RetentionFacts Facts() => new(LastAct, false, 0, null);

    private static Vessel Scrapped()
    {
        var shop = new SampleShop();
        Accept.All(shop.Dispose(shop.Report(), DispositionKind.Scrap));
        return shop.Vessel;
    }

    private static Outcome<VesselArchive> Write(
        Retention retention,
        DateOnly today,
        ArchiveContents? contents = null,
        Actor? actor = null,
        long lastEntry = 9,
        Guid? bundleOf = null
    )
    {
        var vessel = Scrapped();
        return VesselArchive.Write(
            Guid.CreateVersion7(),
            vessel,
            retention,
            new VerifiedBundle(
                new ArchivedBundle(Hash, 1000, 10),
                Manifest(Hash, Contents.Logs[0].Hash, bundleOf ?? vessel.Id)
            ),
            contents ?? Contents,
            lastEntry,
            today,
            actor ?? SamplePeople.QualityManager,
            SampleTime.Start
        );
    }

    private static BundleFile File(string path, string hash) =>
        new()
        {
            Path = path,
            Bytes = 10,
            Sha256 = hash,
        };

    private static BundleManifest Manifest(string attachment, string log, Guid? vessel = null) =>
        new()
        {
            VesselSerial = "V-1",
            VesselId = vessel ?? Guid.CreateVersion7(),
            SiteName = "Works",
            MadeAt = SampleTime.Start,
            Files =
            [
                File(BundlePaths.Attachment(attachment, "jpg"), attachment),
                File(BundlePaths.Log(Run), log),
            ],
        };
}
