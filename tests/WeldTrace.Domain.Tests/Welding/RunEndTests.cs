using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Tests.States;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.Vessels;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Quantities;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Welding;

/// <summary>
/// Floor rules F10 to F12, after the weld. The path of pass 1 is that of its track and overlap by plane geometry:
/// 62 mm · (2π + 15°) = 405.79 mm.
/// </summary>
public sealed class RunEndTests
{
    private const double Path = 0.062 * ((2 * Math.PI) + (15 * Math.PI / 180));

    private readonly SampleShop _shop = new();

    [Fact]
    public void End_ChargesThePlannedPath_UntilTheLogIsIn()
    {
        _shop.Ended();

        var use = Assert.Single(_shop.Tool.Uses);
        Assert.Equal(ChargeBasis.PlannedPath, use.Basis);
        Assert.Equal(Path, use.Length.Metres, 12);
    }

    [Fact]
    public void TakeLog_CorrectsTheCharge_InsteadOfAddingToIt()
    {
        var run = _shop.Ended();

        Accept.Value(_shop.TakeLog(run, SampleRunLogs.Travelled(Length.FromMetres(0.41), run)));

        var use = Assert.Single(_shop.Tool.Uses);
        Assert.Equal(ChargeBasis.ProcessLog, use.Basis);
        Assert.Equal(0.41, use.Length.Metres, 12);
        Assert.Equal(40 - 0.41, _shop.Tool.Remaining.Metres, 12);
    }

    [Fact]
    public void Interrupt_ChargesWhatWasTravelled_FailsTheStepAndHoldsTheVessel()
    {
        var run = _shop.Interrupted();

        var use = Assert.Single(_shop.Tool.Uses);
        Assert.Equal(ChargeBasis.Stated, use.Basis);
        Assert.Equal(Path / 2, use.Length.Metres, 12);
        Assert.Equal(StepState.Failed, _shop.Vessel.Step(10)!.State);
        Assert.Equal(VesselState.OnHold, _shop.Vessel.State);
        var finding = Assert.Single(_shop.Findings);
        Assert.Equal(
            (FindingOrigin.InterruptedRun, run.Id),
            (finding.Origin, finding.EvidenceId!.Value)
        );
        Assert.Equal(Path / 2 / 0.062, finding.Place!.Start!.Value.Radians, 9);
        Assert.Contains("203 mm of 406 mm", finding.Description, StringComparison.Ordinal);
    }

    /// <summary>F12: nothing else happens on the joint before someone has decided.</summary>
    [Fact]
    public void Interrupt_NothingIsWelded_BeforeItIsDisposed()
    {
        var run = _shop.Interrupted();
        Accept.Value(_shop.TakeLog(run));
        Accept.All(run.Sign(_shop.Vessel, SamplePeople.Operator, _shop.Now));
        Assert.Contains("F1", _shop.Start().Refusals.Select(r => r.Code));

        Accept.All(_shop.Dispose(_shop.Findings[0], DispositionKind.Rework));

        Assert.True(_shop.Start().IsAccepted);
    }

    [Theory]
    [InlineData(-0.001)]
    [InlineData(0.406)]
    public void Interrupt_LengthThatCannotBe_IsRefused(double metres)
    {
        var run = _shop.Running();
        var watch = new RecordWatch(run, _shop.Vessel, _shop.Tool);

        var outcome = run.Interrupt(
            Length.FromMetres(metres),
            "Alarm.",
            _shop.Vessel,
            _shop.Tool,
            SamplePeople.Operator,
            _shop.Now
        );

        watch.AssertRefused("travelled", outcome.Refusals);
        Assert.Equal(
            "Give the length travelled, 0 to 406 mm (the planned path).",
            Assert.Single(outcome.Refusals).Sentence
        );
    }

    [Fact]
    public void Interrupt_WithoutAReason_IsRefused()
    {
        var run = _shop.Running();
        var watch = new RecordWatch(run, _shop.Vessel, _shop.Tool);

        var outcome = run.Interrupt(
            Length.Zero,
            " ",
            _shop.Vessel,
            _shop.Tool,
            SamplePeople.Operator,
            _shop.Now
        );

        watch.AssertRefused("missing", outcome.Refusals);
    }

    /// <summary>F11: each excursion opens a finding that says the parameter, how far, against what, and where on the seam.</summary>
    [Fact]
    public void TakeLog_Excursion_OpensAFindingAtItsPlace()
    {
        var run = _shop.Ended();

        var opened = Accept.Value(
            _shop.TakeLog(run, SampleRunLogs.Of(run, SampleRunLogs.Excursion))
        );

        var finding = Assert.Single(opened);
        Assert.Equal(FindingOrigin.Excursion, finding.Origin);
        Assert.Equal(("J1", 1), (finding.Place!.JointCode, finding.Place.PassNumber));
        Assert.Equal(10, finding.Place.Start!.Value.Degrees, 9);
        Assert.Equal(14, finding.Place.End!.Value.Degrees, 9);
        Assert.Contains(
            "above its window on J1 pass 1: 9 kN against 8.8 kN, 10.0° to 14.0° from the start, 4.3 mm of seam",
            finding.Description,
            StringComparison.Ordinal
        );
        Assert.Equal(VesselState.OnHold, _shop.Vessel.State);
    }

    [Fact]
    public void TakeLog_ExcursionsApart_OpenAFindingEach()
    {
        var run = _shop.Ended();

        Accept.Value(
            _shop.TakeLog(
                run,
                SampleRunLogs.Of(
                    run,
                    SampleRunLogs.Excursion,
                    SampleRunLogs.Excursion with
                    {
                        IsAbove = false,
                        ExtremeSi = 7000,
                        StartSeconds = 30,
                        EndSeconds = 32,
                    }
                )
            )
        );

        Assert.Equal(2, _shop.Findings.Count);
        Assert.Contains(
            "below its window on J1 pass 1: 7 kN against 7.2 kN",
            _shop.Findings[1].Description,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void TakeLog_ExcursionsAtOnce_AreOneThingThatHappened()
    {
        var run = _shop.Ended();
        var excursion = SampleRunLogs.Excursion;

        Accept.Value(
            _shop.TakeLog(
                run,
                SampleRunLogs.Of(
                    run,
                    excursion,
                    excursion with
                    {
                        Parameter = WeldParameter.SpindleSpeed,
                        StartSeconds = excursion.EndSeconds - 1,
                        EndSeconds = excursion.EndSeconds + 1,
                        EndAngle = Angle.FromDegrees(20),
                    }
                )
            )
        );

        var finding = Assert.Single(_shop.Findings);
        Assert.Contains("Axial force above", finding.Description, StringComparison.Ordinal);
        Assert.Contains("Spindle speed above", finding.Description, StringComparison.Ordinal);
        Assert.Equal(20, finding.Place!.End!.Value.Degrees, 9);
    }

    [Fact]
    public void TakeLog_Warning_OpensNoFinding()
    {
        var run = _shop.Ended();

        Accept.Value(
            _shop.TakeLog(
                run,
                SampleRunLogs.Of(run, SampleRunLogs.Excursion with { IsWarning = true })
            )
        );

        Assert.Empty(_shop.Findings);
    }

    /// <summary>F12 found by the log: a run that was ended as if whole, but did not reach its end.</summary>
    [Fact]
    public void TakeLog_ShortOfThePath_MakesTheRunInterrupted()
    {
        var run = _shop.Ended();

        Accept.Value(_shop.TakeLog(run, SampleRunLogs.Travelled(Length.FromMetres(0.2), run)));

        Assert.Equal(WeldRunState.Interrupted, run.State);
        Assert.Equal(StepState.Failed, _shop.Vessel.Step(10)!.State);
        Assert.Equal(FindingOrigin.InterruptedRun, Assert.Single(_shop.Findings).Origin);
        Assert.Equal(0.2, Assert.Single(_shop.Tool.Uses).Length.Metres, 12);
    }

    [Fact]
    public void TakeLog_WithoutTravel_IsRefused()
    {
        var run = _shop.Ended();
        var watch = new RecordWatch(run, _shop.Vessel, _shop.Tool);

        watch.AssertRefused(
            "no-travel",
            _shop.TakeLog(run, SampleRunLogs.Travelled(Length.Zero, run)).Refusals
        );
    }

    /// <summary>The tool of the run is charged, and no other.</summary>
    [Fact]
    public void End_WithAnotherTool_IsAMistakeOfTheCaller()
    {
        var run = _shop.Running();
        var other = SampleTools.InService(_shop.ToolDesign, "T-15-09");

        Assert.Throws<ArgumentOutOfRangeException>(() =>
            run.End(null, other, SamplePeople.Operator, _shop.Now)
        );
        Assert.Empty(other.Uses);
    }
}
