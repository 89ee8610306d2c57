using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Testing;

/// <summary>
/// What an NDT report holds: every rejectable flaw and every crack-like one whatever its size (NASA-STD-5009C NER 65, 66), and the
/// conditions of a visual examination (ISO 17637:2003, 2: at least 350 lx, within 600 mm, 30° or more).
/// </summary>
public sealed class ExaminationReportTests
{
    private readonly SampleShop _shop = new();

    [Fact]
    public void Examination_WithoutRejectedFlaw_PassesTheStep()
    {
        var signed = Accept.Value(Confirm(Report with { Flaws = [Flaw(false, false)] }));

        Assert.Null(signed.Finding);
        Assert.Equal(StepState.Passed, _shop.Vessel.Step(10)!.State);
        Assert.Contains("within the level", signed.SignOff.Text, StringComparison.Ordinal);
        Assert.Contains("Not examined: nothing", signed.SignOff.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(true, false)]
    [InlineData(false, true)]
    public void Flaw_ThatIsCrackLike_OrBeyondTheLevel_FailsTheStep_AndHoldsTheVessel(
        bool isCrackLike,
        bool isRejectable
    )
    {
        var signed = Accept.Value(
            Confirm(Report with { Flaws = [Flaw(isCrackLike, isRejectable)] })
        );

        Assert.Equal(FindingOrigin.Examination, signed.Finding!.Origin);
        // 40° clockwise from the mark; the pass begins there and travels the other way.
        Assert.Equal(
            (1, 320),
            (signed.Finding.Place!.PassNumber, signed.Finding.Place.Start!.Value.Degrees)
        );
        Assert.Equal(StepState.Failed, _shop.Vessel.Step(10)!.State);
        Assert.Equal(VesselState.OnHold, _shop.Vessel.State);
    }

    /// <summary>What is measured with must be in the register and within its calibration (F13).</summary>
    [Fact]
    public void Examination_WithInstruments_KeepsThem_AndRefusesOneThatIsUnknown()
    {
        var gauge = SampleInstruments.Caliper();
        TypedInstrument Typed(string mark, Domain.Equipment.Instrument? found) =>
            new(nameof(ExaminationReport.Instruments), mark, found);

        var unknown = Confirm(Report, null, Typed("X-1", null));
        var signed = Accept.Value(Confirm(Report, null, Typed(gauge.Mark, gauge)));

        Assert.Equal("F13", Assert.Single(unknown.Refusals).Code);
        Assert.Equal(gauge.Mark, Assert.Single(signed.SignOff.Examination!.Instruments!).Mark);
    }

    [Fact]
    public void Examination_WithoutExtentOrConditions_NamesEach()
    {
        var outcome = Confirm(Report with { Conditions = "", Tested = " ", NotTested = "" });

        Assert.Equal(["Conditions", "Tested", "NotTested"], outcome.Refusals.Select(r => r.Field));
        Assert.Equal(nameof(StepSignOff.Examination), Assert.Single(Confirm(null).Refusals).Field);
    }

    [Theory]
    [InlineData("340", "300", "60", "350 lx")]
    [InlineData("800", "650", "60", "600 mm")]
    [InlineData("800", "300", "20", "30°")]
    public void Viewing_ThatIsTooPoor_IsToldInTheReport(
        string lux,
        string millimetres,
        string degrees,
        string said
    )
    {
        var signed = Accept.Value(
            Confirm(
                Report with
                {
                    Viewing = new(new(lux, "lx"), new(millimetres, "mm"), new(degrees, "°")),
                }
            )
        );

        Assert.Contains(said, signed.SignOff.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Penetrant_NeedsItsOwnCertificate()
    {
        var visual = SampleTests.Examiner with
        {
            Certificates =
            [
                .. SampleTests.Examiner.Certificates.Where(c =>
                    c.Text.Examiner!.Method == ExaminationMethod.Visual
                ),
            ],
        };
        var penetrant = Report with { Method = PlannedExamination.Penetrant, Viewing = null };

        Assert.NotEmpty(Confirm(penetrant, visual).Refusals);
        Accept.Value(Confirm(penetrant));
    }

    private Outcome<SignedOffStep> Confirm(
        ExaminationReport? report,
        ExaminerFacts? examiner = null,
        params IReadOnlyList<TypedInstrument> typed
    )
    {
        var facts = SampleTests.Facts(_shop, 10);
        return StepSignOff.Confirm(
            Guid.CreateVersion7(SampleTime.Start),
            facts with
            {
                Step = facts.Step with { Kind = StepKind.Examination },
                Examiner = examiner ?? SampleTests.Examiner,
                Typed = typed,
            },
            [],
            null,
            report,
            SamplePeople.Inspector,
            SampleTime.Start
        );
    }

    private static Flaw Flaw(bool isCrackLike, bool isRejectable) =>
        new("J1", new("40", "°"), "line at the toe", new("0.3", "mm"), isCrackLike, isRejectable);

    private static ExaminationReport Report { get; } =
        new(
            PlannedExamination.Visual,
            "ISO 17637:2016",
            "ISO 25239-5:2020, level C",
            "VT-4",
            new(new("800", "lx"), new("300", "mm"), new("60", "°")),
            "as welded, lens 2.5 times",
            "J1 over 360°",
            "nothing",
            []
        );
}
