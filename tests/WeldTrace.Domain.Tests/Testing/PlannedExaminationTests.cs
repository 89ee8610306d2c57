using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Testing;

/// <summary>What the design plans for every vessel is made before it is accepted (ISO 25239-5:2020, 4.12.4).</summary>
public sealed class PlannedExaminationTests
{
    private readonly SampleShop _shop = new(design: Design);
    private readonly List<StepSignOff> _signOffs = [];

    private static DesignContent Design
    {
        get
        {
            var content = SampleDesigns.Content();
            return content with
            {
                Examinations =
                [
                    Planned(PlannedExamination.Visual),
                    Planned(PlannedExamination.Dimensional),
                ],
                Route =
                [
                    Step(2, StepKind.Examination),
                    Step(4, StepKind.Examination),
                    Step(6, StepKind.Examination),
                    Step(8, StepKind.Acceptance),
                    .. content.Route.SkipLast(1),
                ],
            };
        }
    }

    [Fact]
    public void Acceptance_WithoutAPlannedExamination_IsRefused_AndNamesIt()
    {
        Accept.Value(Examine(2, PlannedExamination.Visual));

        var refusal = Assert.Single(
            StepSignOff.RefusalsBefore(Facts(8), [], SamplePeople.Inspector),
            r => r.Code == "examination"
        );

        Assert.Contains(": dimensional examination", refusal.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Acceptance_AfterEachPlannedExamination_LacksNoneOfThem()
    {
        Accept.Value(Examine(2, PlannedExamination.Dimensional));
        Accept.Value(Examine(4, PlannedExamination.Visual));

        Assert.DoesNotContain(
            StepSignOff.RefusalsBefore(Facts(8), [], SamplePeople.Inspector),
            r => r.Code == "examination"
        );
    }

    /// <summary>Of three steps one is free; the last two are kept for the two planned methods.</summary>
    [Fact]
    public void LastSteps_AreKeptForThePlannedMethods()
    {
        Accept.Value(Examine(2, PlannedExamination.Penetrant));

        var again = Examine(4, PlannedExamination.Penetrant);

        Assert.Equal("method", Assert.Single(again.Refusals).Code);
        Accept.Value(Examine(4, PlannedExamination.Visual));
        Assert.False(Examine(6, PlannedExamination.Visual).IsAccepted);
        Accept.Value(Examine(6, PlannedExamination.Dimensional));
        Assert.Empty(Facts(8).NotYetExamined);
    }

    /// <summary>A rejected flaw fails the step; the method counts once the step is done.</summary>
    [Fact]
    public void Examination_ThatRejects_CountsOnlyOnceTheStepIsDone()
    {
        var flaw = new Flaw("J1", new("40", "°"), "line at the toe", new("3", "mm"), false, true);
        Accept.Value(Examine(2, PlannedExamination.Visual, flaw));

        Assert.Equal(
            [PlannedExamination.Visual, PlannedExamination.Dimensional],
            Facts(4).NotYetExamined
        );
    }

    private Outcome<SignedOffStep> Examine(
        int sequence,
        PlannedExamination method,
        params IReadOnlyList<Flaw> flaws
    )
    {
        var outcome = StepSignOff.Confirm(
            Guid.CreateVersion7(SampleTime.Start),
            Facts(sequence),
            [],
            null,
            Report(method) with
            {
                Flaws = flaws,
            },
            SamplePeople.Inspector,
            _shop.Now
        );
        if (outcome.IsAccepted)
        {
            _signOffs.Add(outcome.Value.SignOff);
        }

        return outcome;
    }

    private TestFacts Facts(int sequence) =>
        SampleTests.Facts(_shop, sequence) with
        {
            Examined = StepSignOff.Examined(_shop.Vessel, _signOffs),
        };

    private static ExaminationReport Report(PlannedExamination method) =>
        new(
            method,
            "method standard:2020",
            "acceptance standard:2020, level B",
            "P-4",
            method == PlannedExamination.Visual
                ? new(new("800", "lx"), new("300", "mm"), new("60", "°"))
                : null,
            "as welded",
            "J1 over 360°",
            "nothing",
            []
        );

    private static PlannedMethod Planned(PlannedExamination method) =>
        new(null, method, 100, "method standard:2020", "acceptance standard:2020", "level B");

    private static RouteTemplateStep Step(int sequence, StepKind kind) =>
        new(sequence, kind, $"Step {sequence}", null, null, StopPoint.None);
}
