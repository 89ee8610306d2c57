using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering.Quantities;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.VesselDesigns;

/// <summary>
/// Test plan and ladder of a design: least methods by class (NASA-STD-5006A figure 5), substitution (ISO 25239-5:2020, 4.12.4.4 and
/// 4.12.4.6), proof pressure by rule (2014/68/EU Annex I 7.4).
/// </summary>
public sealed class DesignPlanTests
{
    [Theory]
    [InlineData(JointClass.A, "visual dimensional surface volumetric")]
    [InlineData(JointClass.B, "visual dimensional surface")]
    [InlineData(JointClass.C, "visual dimensional")]
    public void Class_SetsTheLeastExaminations(JointClass weldClass, string expected)
    {
        var content = Classed(weldClass);

        Assert.Equal(
            expected,
            string.Join(
                " ",
                ExaminationPlan.Missing(content, content.Joints[0]).Select(m => m.What)
            )
        );
        Assert.Equal(expected.Split(' ').Length, content.Check().Count);
    }

    /// <summary>A site's own table decides, and the refusal names it.</summary>
    [Fact]
    public void OwnTable_SetsTheLeastExaminations()
    {
        var content = Classed(JointClass.C) with
        {
            Least = new LeastExaminations(
                new LimitReference(Guid.Empty, "EXAM-OWN edition 2", "DS-12, B, 4", true),
                [
                    new(
                        JointClass.C,
                        "volumetric",
                        [PlannedExamination.Radiographic, PlannedExamination.Ultrasonic]
                    ),
                ]
            ),
        };

        var refusal = Assert.Single(content.Check());

        Assert.Contains("radiographic or ultrasonic", refusal.Sentence, StringComparison.Ordinal);
        Assert.Equal("DS-12, B, 4 (EXAM-OWN edition 2)", refusal.Source);
    }

    [Fact]
    public void Plan_ThatHoldsTheLeast_IsAccepted() =>
        Assert.Empty(
            (
                WithSteps(Classed(JointClass.A), 4) with
                {
                    Examinations =
                    [
                        Of(PlannedExamination.Visual),
                        Of(PlannedExamination.Dimensional),
                        Of(PlannedExamination.Penetrant),
                        Of(PlannedExamination.Ultrasonic),
                    ],
                }
            ).Check()
        );

    /// <summary>What is planned for every vessel is made and recorded (ISO 25239-5:2020, 4.12.4); a leak test has its own kind of step.</summary>
    [Theory]
    [InlineData(1, "route")]
    [InlineData(2, null)]
    public void EachPlannedMethod_NeedsAStepOfTheRoute(int steps, string? expected)
    {
        var content = WithSteps(SampleDesigns.Content(), steps) with
        {
            Examinations =
            [
                Of(PlannedExamination.Visual),
                Of(PlannedExamination.Visual) with
                {
                    JointCode = "J1",
                },
                Of(PlannedExamination.Dimensional),
                Of(PlannedExamination.Leak),
                Of(PlannedExamination.Radiographic) with
                {
                    ExtentPercent = 10,
                },
            ],
        };

        Assert.Equal(expected, content.Check().Select(r => r.Code).SingleOrDefault());
    }

    [Theory]
    [InlineData(PlannedExamination.Leak, PlannedExamination.Penetrant, null, false)]
    [InlineData(PlannedExamination.Leak, PlannedExamination.Penetrant, "DS-12, 5.3", true)]
    [InlineData(PlannedExamination.Ultrasonic, PlannedExamination.Radiographic, " ", false)]
    [InlineData(PlannedExamination.Ultrasonic, PlannedExamination.Radiographic, "DS-12, 5.4", true)]
    [InlineData(PlannedExamination.Visual, PlannedExamination.Penetrant, "DS-12, 5.5", false)]
    public void Substitution_NeedsItsClause(
        PlannedExamination method,
        PlannedExamination replaced,
        string? clause,
        bool isAccepted
    )
    {
        var content = WithSteps(SampleDesigns.Content(), 1) with
        {
            Examinations = [Of(method) with { Replaces = replaced, Clause = clause }],
        };

        Assert.Equal(isAccepted, content.Check().Count == 0);
        Assert.True(isAccepted || content.Check()[0].Code == "substitution");
    }

    [Fact]
    public void Examination_WithoutAcceptanceStandardOrOfNoJoint_IsRefused()
    {
        var content = WithSteps(SampleDesigns.Content(), 1) with
        {
            Examinations =
            [
                Of(PlannedExamination.Visual) with
                {
                    AcceptanceStandard = "",
                },
                Of(PlannedExamination.Visual) with
                {
                    JointCode = "J9",
                },
                Of(PlannedExamination.Visual) with
                {
                    ExtentPercent = 0,
                },
            ],
        };

        Assert.Equal(["missing", "examination", "extent"], content.Check().Select(r => r.Code));
    }

    /// <summary>12 bar operating, proof stage 18 bar; 1.43·PS is 17.16 bar for PS 12 and 18.59 bar for PS 13.</summary>
    [Theory]
    [InlineData(12, 100, true)]
    [InlineData(13, 100, false)]
    [InlineData(12, 121, false)]
    public void ProofStage_MustReachTheRule(double ps, double strengthAtTest, bool isAccepted)
    {
        var content = SampleDesigns.Content();
        content = content with
        {
            Pressures = content.Pressures with
            {
                Basis = new LadderBasis(
                    LadderRule.GreaterOf,
                    0,
                    2,
                    Pressure.FromBar(ps),
                    Pressure.FromMegapascals(strengthAtTest),
                    Pressure.FromMegapascals(100)
                ),
            },
        };

        Assert.Equal(isAccepted, content.Check().Count == 0);
        Assert.True(isAccepted || content.Check()[0].Code == "ladder");
    }

    /// <summary>Factors 1.5 and 2 with a strength of 110 at test and 100 in service: 1.5·1.1·12 = 19.8 bar, above the stage of 18 bar.</summary>
    [Fact]
    public void Temperature_RaisesTheProofPressure()
    {
        var plan = SampleDesigns.Content().Pressures;
        var basis = new LadderBasis(
            LadderRule.Factors,
            1.5m,
            2m,
            null,
            Pressure.FromMegapascals(110),
            Pressure.FromMegapascals(100)
        );

        Assert.Equal(19.8, basis.LeastProof(plan).Value.Bar, 1e-9);
        Assert.Equal(26.4, basis.LeastBurst(plan).Bar, 1e-9);
    }

    [Theory]
    [InlineData(1.4, "burst")]
    [InlineData(2.5, null)]
    public void Burst_IsAboveEveryOtherStage_AndLast(double factor, string? expected)
    {
        var content = SampleDesigns.Content();
        var burst = new PressureStage(PressureStageKind.Burst, (decimal)factor, 0);
        var plan = content.Pressures;

        var last = content with { Pressures = plan with { Stages = [.. plan.Stages, burst] } };
        var first = content with { Pressures = plan with { Stages = [burst, .. plan.Stages] } };

        Assert.Equal(expected, last.Check().Select(r => r.Code).FirstOrDefault());
        Assert.Contains(first.Check(), r => r.Code == "burst");
    }

    private static DesignContent WithSteps(DesignContent content, int steps) =>
        content with
        {
            Route =
            [
                .. content.Route.SkipLast(1),
                .. Enumerable
                    .Range(51, steps)
                    .Select(n => new RouteTemplateStep(
                        n,
                        StepKind.Examination,
                        $"Examination {n}",
                        null,
                        null,
                        StopPoint.None
                    )),
                content.Route[^1],
            ],
        };

    private static DesignContent Classed(JointClass weldClass)
    {
        var content = SampleDesigns.Content();
        return content with { Joints = [content.Joints[0] with { Class = weldClass }] };
    }

    private static PlannedMethod Of(PlannedExamination method) =>
        new(null, method, 100, "method standard:2020", "acceptance standard:2020", "level B");
}
