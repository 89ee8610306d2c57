using WeldTrace.Domain.Lots;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tests.States;
using WeldTrace.Domain.Vessels;
using WeldTrace.Engineering.Conformity;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Lots;

/// <summary>Forming a lot, choosing its samples, and what their results do to it.</summary>
public sealed class ProductionLotTests
{
    [Fact]
    public void Form_GathersTheVessels()
    {
        var shop = new LotShop();

        var lot = Accept.Value(shop.Form());

        Assert.Equal(LotState.Gathering, lot.State);
        Assert.Equal(shop.Vessels.Select(v => v.Serial), lot.Vessels.Select(v => v.Label));
        Assert.All(
            shop.Vessels,
            v => Assert.Equal((lot.Id, "L-1"), (v.LotId!.Value, v.ProductionLot))
        );
    }

    [Fact]
    public void Form_OfADesignWithoutSamples_IsRefused()
    {
        var shop = new SampleShop();
        var watch = new RecordWatch(shop.Vessel);

        var lot = ProductionLot.Form(
            "L-1",
            shop.Design,
            SampleLots.Rule(shop.Procedure, shop.ToolDesign),
            [shop.Vessel],
            SamplePeople.Engineer,
            SampleTime.Start
        );

        watch.AssertRefused("design", lot.Refusals);
    }

    [Fact]
    public void Form_OfTooFew_OfVesselsOfAnotherLot_OrOutsideTheRule_IsRefused()
    {
        var shop = new LotShop(vessels: 3);
        var other = SampleMaterial.Lot("ML-900");
        var watch = new RecordWatch([.. shop.Vessels]);
        watch.AssertRefused("count", shop.Form(vessels: [shop.Vessels[0]]).Refusals);
        watch.AssertRefused(
            "vessel",
            shop.Form(shop.Rule with { MaterialLot = RecordName.Of(other) }).Refusals
        );
        watch.AssertRefused(
            "window",
            shop.Form(shop.Rule with { Until = SampleTime.Day.AddDays(-1) }).Refusals
        );
        watch.AssertRefused("role", shop.Form(actor: SamplePeople.Inspector).Refusals);

        Accept.Value(shop.Form());
        Assert.Equal(3, shop.Form().Refusals.Count(r => r.Code == "vessel"));
    }

    [Fact]
    public void Form_WithAVesselThatIsWeldedOn_IsRefused()
    {
        var shop = new LotShop();
        Accept.All(shop.Vessels[1].BeginStep(10, SamplePeople.Operator, SampleTime.Start));

        var refusal = Assert.Single(shop.Form().Refusals);

        Assert.StartsWith(
            "NR4-0002 is welded on already",
            refusal.Sentence,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void ChooseSamples_TakesTheDrawn_AndGivesThemTheirRoute()
    {
        var shop = new LotShop(vessels: 6, bursts: 2);

        var lot = shop.Sampled();

        Assert.Equal(3, lot.Samples.Count);
        var section = shop.Vessel(lot.Samples.Single(s => s.Kind == SampleKind.Section));
        var bursts = lot.Samples.Where(s => s.Kind == SampleKind.Burst).ToList();
        Assert.Equal(
            shop.Vessels.Reverse().Where(v => v != section).Take(2).Select(v => v.Serial),
            bursts.Select(s => s.Serial)
        );
        Assert.Equal([10, 20, 30, 40, 50], section.Steps.Select(s => s.Sequence));
        Assert.Equal([10, 20, 30, 40, 70], shop.Vessel(bursts[0]).Steps.Select(s => s.Sequence));
        Assert.Equal(
            [10, 20, 30, 40, 60],
            shop.Vessels.First(v => v.Sample is null).Steps.Select(s => s.Sequence)
        );
        Assert.Equal(StepState.Ready, section.NextStep!.State);
    }

    /// <summary>Anybody can draw again from the identity of the lot; another lot draws others.</summary>
    [Fact]
    public void Draw_IsTheSameForTheSameLot_AndNotForAllLots()
    {
        var drawn = Enumerable
            .Range(0, 20)
            .Select(_ => Accept.Value(new LotShop(vessels: 9).Form()))
            .ToList();

        Assert.All(drawn, lot => Assert.Equal(lot.Draw([]), lot.Draw([])));
        Assert.True(drawn.Select(lot => lot.Draw([])[0].Serial).Distinct().Count() > 3);
    }

    [Fact]
    public void ChooseSamples_Named_NeedsSerialOfTheLot_AndAReason()
    {
        var shop = new LotShop(sections: SampleChoice.Named);
        var lot = Accept.Value(shop.Form());
        var watch = new RecordWatch([lot, .. shop.Vessels]);
        watch.AssertRefused("count", shop.Choose(lot).Refusals);
        watch.AssertRefused(
            "serial",
            shop.Choose(
                lot,
                null,
                new NamedSample(SampleKind.Section, "NR4-0099", "Last.")
            ).Refusals
        );
        watch.AssertRefused(
            "missing",
            shop.Choose(lot, null, new NamedSample(SampleKind.Section, "NR4-0002", " ")).Refusals
        );

        Accept.All(
            shop.Choose(lot, null, new NamedSample(SampleKind.Section, "NR4-0002", "New tool."))
        );

        Assert.Equal("New tool.", Assert.Single(lot.Samples).Reason);
    }

    [Fact]
    public void ChooseSamples_AfterWeldingStarted_Twice_OrByAnEngineer_IsRefused()
    {
        var shop = new LotShop();
        var lot = Accept.Value(shop.Form());
        new RecordWatch(lot).AssertRefused(
            "role",
            shop.Choose(lot, SamplePeople.Engineer).Refusals
        );
        Accept.All(shop.Vessels[2].BeginStep(10, SamplePeople.Operator, SampleTime.Start));
        new RecordWatch(lot).AssertRefused("welded", shop.Choose(lot).Refusals);

        var again = new LotShop();
        var sampled = again.Sampled();
        new RecordWatch([sampled, .. again.Vessels]).AssertRefused(
            "state",
            again.Choose(sampled).Refusals
        );
    }

    /// <summary>F20: a failed sample, and one that is undecided, holds every vessel of the lot.</summary>
    [Theory]
    [InlineData(Verdict.Fail)]
    [InlineData(Verdict.Undecided)]
    public void TakeResult_ThatIsNoPass_HoldsEveryVessel(Verdict verdict)
    {
        var shop = new LotShop();
        var lot = shop.Sampled();

        var findings = shop.Take(lot, lot.Samples[0], verdict);

        Assert.Equal(LotState.Failed, lot.State);
        Assert.Equal(4, findings.Count);
        Assert.All(
            shop.Vessels.Where(v => v.Id != lot.Samples[0].VesselId),
            v => Assert.Equal(VesselState.OnHold, v.State)
        );
        Assert.Contains("F20", AcceptLot(lot).Refusals.Select(r => r.Code));
    }

    [Fact]
    public void Accept_NeedsEveryResult_AndASecondPerson()
    {
        var shop = new LotShop(vessels: 6, bursts: 1);
        var lot = shop.Sampled();
        shop.Take(lot, lot.Samples[0]);
        new RecordWatch(lot).AssertRefused("F20", AcceptLot(lot).Refusals);
        shop.Take(lot, lot.Samples[1], Verdict.Pass, 31);
        new RecordWatch(lot).AssertRefused(
            "F17",
            AcceptLot(lot, weldedBy: [SamplePeople.Inspector.PersonId]).Refusals
        );
        new RecordWatch(lot).AssertRefused("role", AcceptLot(lot, SamplePeople.Operator).Refusals);

        Accept.All(AcceptLot(lot));

        Assert.Equal(LotState.Accepted, lot.State);
        Assert.NotEmpty(lot.Acceptance!.Statement.Sentences);
        Assert.True(lot.IsSealed);
        Assert.Empty(shop.Take(lot, lot.Samples[1], Verdict.Fail));
    }

    /// <summary>A sample that passed when it was tested again, as decided, lets the lot go on.</summary>
    [Fact]
    public void TakeResult_PassAfterAFail_AwaitsTheLotAgain()
    {
        var shop = new LotShop();
        var lot = shop.Sampled();
        shop.Take(lot, lot.Samples[0], Verdict.Undecided);

        Assert.Empty(shop.Take(lot, lot.Samples[0]));

        Assert.Equal(LotState.Sampling, lot.State);
        Assert.True(lot.HasPassed);
    }

    [Fact]
    public void TakeResult_OfAVesselThatIsNoSample_ChangesNothing()
    {
        var shop = new LotShop();
        var lot = shop.Sampled();
        var other = shop.Vessels.First(v => v.Sample is null);
        var watch = new RecordWatch([lot, .. shop.Vessels]);

        var found = shop.Take(
            lot,
            new LotSample(SampleKind.Section, other.Id, other.Serial, SampleChoice.Named, null),
            Verdict.Fail
        );

        Assert.Empty(found);
        watch.AssertOutcome("=Sampling", [], lot.State);
    }

    /// <summary>A sample that went through all its steps is used up; it is never accepted.</summary>
    [Fact]
    public void Sample_WhenItsRouteIsDone_IsExpended()
    {
        var shop = new LotShop();
        var sample = shop.Vessel(shop.Sampled().Samples[0]);

        while (sample.NextStep is { } step)
        {
            Accept.All(sample.PassStep(step.Sequence, SamplePeople.Inspector, SampleTime.Start));
        }

        Assert.Equal(VesselState.Expended, sample.State);
    }

    private static Outcome AcceptLot(
        ProductionLot lot,
        Actor? actor = null,
        params IReadOnlyList<Guid> weldedBy
    ) =>
        lot.Accept(
            LotStatistics.State(lot, SampleDesigns.Content().Pressures.Meop, 0, 0).Statement,
            weldedBy,
            actor ?? SamplePeople.Inspector,
            SampleTime.Start
        );
}
