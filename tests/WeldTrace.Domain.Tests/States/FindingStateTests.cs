using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.States;

public sealed class FindingStateTests
{
    private const string Table = """
                  useAsIs   rework    repair    scrap     close
        Open      Disposed  Disposed  Disposed  Disposed  !state
        Disposed  !state    !state    !state    !state    Closed
        Closed    !state    !state    !state    !state    !state
        """;

    public static TheoryData<FindingState, string, string> Cells =>
        StateTable.Read<FindingState>(Table);

    [Theory]
    [MemberData(nameof(Cells))]
    public void Act_InState_FollowsTheTable(FindingState state, string act, string expected)
    {
        // What is repaired was welded before.
        var shop = new SampleShop().Reach(20);
        var finding = In(shop, state);
        var watch = new RecordWatch(finding, shop.Vessel);

        var outcome =
            act == "close"
                ? shop.Close(finding)
                : shop.Dispose(finding, Enum.Parse<DispositionKind>(act, true));

        watch.AssertOutcome(expected, outcome.Refusals, finding.State);
    }

    [Fact]
    public void Open_HoldsTheVessel_AndClosingTheLastLiftsIt()
    {
        var shop = new SampleShop();
        var (first, second) = (shop.Report(), shop.Report());
        Assert.Equal(VesselState.OnHold, shop.Vessel.State);

        shop.Settle(first);
        Assert.Equal(VesselState.OnHold, shop.Vessel.State);
        shop.Settle(second);

        Assert.Equal(VesselState.InWork, shop.Vessel.State);
    }

    [Fact]
    public void Close_BeforeTheStepIsDoneAgain_IsRefused()
    {
        var shop = new SampleShop();
        shop.Interrupted();
        var finding = shop.Findings[0];
        Accept.All(shop.Dispose(finding, DispositionKind.Rework));
        var watch = new RecordWatch(finding, shop.Vessel);

        watch.AssertRefused("rework", shop.Close(finding).Refusals);
    }

    /// <summary>A leak shows at step 30, and is mended at step 10: the weld, and then the test, can be done again.</summary>
    [Fact]
    public void Rework_OfAFailedTest_LetsTheWeldBeDoneAgainFirst()
    {
        var shop = new SampleShop().Reach(30);
        var leak = Accept.Value(SampleTests.RecordLeak(shop, SampleTests.Leaking));
        Accept.Value(SampleTests.Sign(shop, leak));
        var failed = Assert.Single(shop.Findings);
        Accept.All(shop.Dispose(failed, DispositionKind.Rework));
        var seam = shop.Report(10);
        Accept.All(shop.Dispose(seam, DispositionKind.Rework));

        shop.Welded(10);
        Accept.All(shop.Close(seam));
        var again = Accept.Value(SampleTests.RecordLeak(shop, SampleTests.Tight));
        Accept.Value(SampleTests.Sign(shop, again));
        Accept.All(shop.Close(failed));

        Assert.Equal(VesselState.InWork, shop.Vessel.State);
        Assert.Equal(40, shop.Vessel.NextStep!.Sequence);
    }

    [Fact]
    public void Dispose_ByTheWelder_NeedsASecondPerson()
    {
        var shop = new SampleShop();
        shop.Interrupted();
        var (finding, watch) = (shop.Findings[0], new RecordWatch(shop.Findings[0], shop.Vessel));
        var both = SamplePeople.Operator with
        {
            Roles = [Domain.People.Role.Operator, Domain.People.Role.Inspector],
        };

        var outcome = finding.Dispose(
            DispositionKind.UseAsIs,
            "Fine.",
            shop.Vessel,
            shop.WeldedBy,
            both,
            shop.Now
        );

        watch.AssertRefused("F17", outcome.Refusals);
    }

    [Theory]
    [InlineData(DispositionKind.UseAsIs)]
    [InlineData(DispositionKind.Rework)]
    [InlineData(DispositionKind.Repair)]
    public void Dispose_OnAScrappedVessel_LeavesOnlyScrap(DispositionKind kind)
    {
        var shop = new SampleShop();
        shop.Interrupted();
        var second = shop.Report();
        Accept.All(shop.Dispose(shop.Findings[0], DispositionKind.Scrap));
        var watch = new RecordWatch(second, shop.Vessel);

        watch.AssertRefused("vessel", shop.Dispose(second, kind).Refusals);
        Accept.All(shop.Dispose(second, DispositionKind.Scrap), shop.Close(second));
        Assert.Equal(VesselState.Scrapped, shop.Vessel.State);
    }

    [Fact]
    public void Close_ReworkOfAVesselThatWasScrapped_IsPossible()
    {
        var shop = new SampleShop();
        var (rework, scrap) = (shop.Report(), shop.Report());
        Accept.All(
            shop.Dispose(rework, DispositionKind.Rework),
            shop.Dispose(scrap, DispositionKind.Scrap),
            shop.Close(rework),
            shop.Close(scrap)
        );

        Assert.Equal(VesselState.Scrapped, shop.Vessel.State);
    }

    [Theory]
    [InlineData(nameof(SamplePeople.Auditor))]
    [InlineData(nameof(SamplePeople.Operator))]
    [InlineData(nameof(SamplePeople.Engineer))]
    public void Dispose_WithoutTheRole_IsRefused(string who)
    {
        var actor = (Actor)typeof(SamplePeople).GetProperty(who)!.GetValue(null)!;
        var shop = new SampleShop();
        var finding = shop.Report();
        var watch = new RecordWatch(finding, shop.Vessel);

        watch.AssertRefused(
            "role",
            finding
                .Dispose(DispositionKind.UseAsIs, "Fine.", shop.Vessel, [], actor, shop.Now)
                .Refusals
        );
    }

    private static Finding In(SampleShop shop, FindingState state)
    {
        var finding = shop.Report();
        if (state != FindingState.Open)
        {
            Accept.All(shop.Dispose(finding, DispositionKind.UseAsIs));
        }

        if (state == FindingState.Closed)
        {
            Accept.All(shop.Close(finding));
        }

        return finding;
    }
}
