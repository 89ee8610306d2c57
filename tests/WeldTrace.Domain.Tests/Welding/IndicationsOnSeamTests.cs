using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Welding;

/// <summary>Where on the path of a run the places lie that other records speak of. Angles are plane geometry, worked by hand.</summary>
public sealed class IndicationsOnSeamTests
{
    private readonly SampleShop _shop = new();

    /// <summary>
    /// The pass begins 90° clockwise from the mark, at three o'clock. Clockwise, the mark at twelve o'clock comes 270° later and nine
    /// o'clock 180° later; the other way round it is 90° and 180°.
    /// </summary>
    [Theory]
    [InlineData(0, 270, 90)]
    [InlineData(90, 0, 0)]
    [InlineData(270, 180, 180)]
    [InlineData(330, 240, 120)]
    public void PlaceFromTheMark_IsCountedAlongTheTravel(
        double fromMark,
        double clockwise,
        double counterClockwise
    )
    {
        var outer = _shop.Welded(10);
        var inner = _shop.Welded(20);
        var angle = Angle.FromDegrees(fromMark);

        Assert.Equal(RotationSense.CounterClockwise, outer.Travel);
        Assert.Equal(counterClockwise, On(outer).Pass.FromMark(angle).Degrees, 1e-9);
        Assert.Equal(RotationSense.Clockwise, inner.Travel);
        Assert.Equal(clockwise, On(inner).Pass.FromMark(angle).Degrees, 1e-9);
    }

    [Fact]
    public void SectionOfAPass_StandsOnThatPassOnly_AndNoLongerOnceWithdrawn()
    {
        var runs = (Outer: _shop.Welded(10), Inner: _shop.Welded(20));
        _shop.Reach(50);
        var section = Accept.Value(SampleTests.TakeInSection(_shop));

        var found = Assert.Single(On(runs.Outer).Of([section], [], [], []));

        Assert.Equal((SeamIndicationKind.Section, section.Id), (found.Kind, found.Record.Id));
        Assert.Equal(90, found.Along.Degrees, 1e-9);
        Assert.Empty(On(runs.Inner).Of([section], [], [], []));
        Accept.All(section.Withdraw("wrong specimen", SamplePeople.Inspector, _shop.Now));
        Assert.Empty(On(runs.Outer).Of([section], [], [], []));
    }

    [Fact]
    public void Flaws_StandOnEveryPassOfTheirJoint_InTheOrderOfTheTravel()
    {
        var run = _shop.Welded(10);
        var other = new SampleShop();
        var signed = Accept.Value(
            StepSignOff.Confirm(
                Guid.CreateVersion7(SampleTime.Start),
                Examined(other),
                [],
                null,
                Report(Flaw("J1", "30", true), Flaw("J1", "200", false)),
                SamplePeople.Inspector,
                SampleTime.Start
            )
        );

        var found = On(run).Of([], [signed.SignOff], [], []);

        Assert.Equal([60, 250], found.Select(f => Math.Round(f.Along.Degrees, 6)));
        Assert.Contains("rejected", found[0].What, StringComparison.Ordinal);
        Assert.All(found, f => Assert.Equal("flaw", f.Word));
    }

    [Fact]
    public void ReportedFinding_StandsAtItsPlace_AndThatOfATestDoesNot()
    {
        var run = _shop.Welded(10);
        var reported = Accept.Value(
            Finding.Report(
                Guid.CreateVersion7(SampleTime.Start),
                _shop.Vessel,
                _shop.Design,
                10,
                "Scratch across the seam.",
                new SeamPlace("J1", 1, Angle.FromDegrees(372), null),
                SamplePeople.Inspector,
                _shop.Now
            )
        );
        var interrupted = new SampleShop();
        interrupted.Interrupted();

        var found = On(run).Of([], [], [], [reported, .. interrupted.Findings]);

        Assert.Equal(372, Assert.Single(found).Along.Degrees, 1e-9);
    }

    private IndicationsOnSeam On(WeldRun run)
    {
        var pass = _shop.Design.Content.Joint("J1")!.Pass(run.PassNumber)!;
        return new(run, pass with { Start = Angle.FromDegrees(90) });
    }

    private static TestFacts Examined(SampleShop shop)
    {
        var facts = SampleTests.Facts(shop, 10);
        return facts with { Step = facts.Step with { Kind = StepKind.Examination } };
    }

    private static Flaw Flaw(string joint, string degrees, bool isRejectable) =>
        new(joint, new(degrees, "°"), "line at the toe", new("2", "mm"), false, isRejectable);

    private static ExaminationReport Report(params IReadOnlyList<Flaw> flaws) =>
        new(
            PlannedExamination.Visual,
            "ISO 17637:2016",
            "ISO 25239-5:2020, level C",
            "VT-4",
            new(new("800", "lx"), new("300", "mm"), new("60", "°")),
            "as welded",
            "J1 over 360°",
            "nothing",
            flaws
        );
}
