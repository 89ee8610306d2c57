using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Qualification;
using WeldTrace.Engineering.Quantities;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Qualification;

/// <summary>Each computed limit leads to its rule's source and working; values by BS EN 288-4:1992 table 6 and EN 14532-3:2004 table 2.</summary>
public sealed class QualificationWorkingTests
{
    private readonly Domain.Tooling.ToolDesign _design = SampleTools.Design();

    [Theory]
    [InlineData(
        8,
        true,
        "t_min = c; t_max = b·t",
        "The rule is for thicknesses tested above 3 mm up to 12 mm, welded in several passes."
    )]
    [InlineData(
        90,
        true,
        "t_min = a·t; t_max = min(b·t, m)",
        "The rule is for thicknesses tested above 12 mm up to 100 mm, welded in several passes."
    )]
    [InlineData(
        3,
        false,
        "t_min = a·t; t_max = b·t",
        "The rule is for any thickness tested, welded in one pass."
    )]
    public void Thickness_ByARow_SaysFormulaScopeAndSource(
        double tested,
        bool severalPasses,
        string formula,
        string scope
    )
    {
        var ruleSet = SampleLimits.Of("RANGE-288");

        var working = RangeRules
            .Thickness(ruleSet, Length.FromMillimetres(tested), severalPasses)
            .Working;

        Assert.Equal(formula, working.Formula);
        Assert.Equal(scope, working.Validity.Sentence);
        Assert.StartsWith(ruleSet.Label, working.Source, StringComparison.Ordinal);
        Assert.EndsWith(
            "(not checked against an own copy)",
            working.Source,
            StringComparison.Ordinal
        );
        Assert.Equal(["t_min", "t_max"], working.Results.Select(r => r.Symbol));
    }

    [Fact]
    public void Thickness_WithoutARow_SaysThatItStaysAsTested()
    {
        var working = RangeRules
            .Thickness(
                SampleLimits.Of(ShippedLimits.StrictRange),
                Length.FromMillimetres(3),
                severalPasses: false
            )
            .Working;

        Assert.Equal("t_min = t; t_max = t", working.Formula);
        Assert.Contains("stays as tested", working.Validity.Sentence, StringComparison.Ordinal);
        Assert.Equal([3.0, 3.0], working.Results.Select(r => r.Value));
    }

    [Fact]
    public void OfRange_Signed_HasAWorkingForEachComputedLineOfItsTable()
    {
        var revision = SampleProcedures.OnTrial(_design);
        var record = SampleQualifications.Signed(revision, _design).Record;
        var ruleSet = SampleLimits.Of(ShippedLimits.StrictRange);

        var workings = QualificationWorking
            .OfRange(record, revision.Content, ruleSet)
            .ToDictionary(w => w.Key, w => w.Working);

        Assert.Equal(
            RangeWords.Table(record.Range!).Select(l => l.Key).OfType<string>().Order(),
            workings.Keys.Order()
        );
        var spindle = workings[nameof(WeldParameter.SpindleSpeed)];
        Assert.Equal([780.0, 820.0], spindle.Intermediates.Select(v => v.Value));
        Assert.Equal([780.0, 820.0], spindle.Results.Select(v => v.Value));
    }

    [Fact]
    public void OfRange_Open_IsEmpty()
    {
        var revision = SampleProcedures.OnTrial(_design);

        Assert.Empty(
            QualificationWorking.OfRange(
                SampleQualifications.Open(revision),
                revision.Content,
                SampleLimits.Of(ShippedLimits.StrictRange)
            )
        );
    }

    [Fact]
    public void OfTensile_ByFactor_ShowsFactorAndMinimum()
    {
        // 0.6 × 310 = 186 MPa for 6061-T6 aged naturally.
        var plan = Plan(
            "6061",
            "T6",
            SampleQualifications.Request with
            {
                Tensile = new(new("310", "MPa"), "EN 485-2", null, null, null, null),
            }
        );

        var working = QualificationWorking.Of(plan, plan.Tensile!)!;

        Assert.Equal([0.6, 310.0], working.Inputs.Select(v => v.Value));
        Assert.Equal(186, Assert.Single(working.Results).Value, 1e-9);
        Assert.Contains("EN 14532-3", working.Source, StringComparison.Ordinal);
    }

    [Fact]
    public void OfTensile_OfTheDesignSpecification_IsNotWorkedOut()
    {
        var plan = Plan(
            "2219",
            "T87",
            SampleQualifications.Request with
            {
                DesignFormer = new("20", "mm"),
                DesignFormerDocument = "DS-10, 4.2",
                Tensile = new(null, null, null, null, new("250", "MPa"), "DS-10, 4.1"),
            }
        );

        Assert.Null(QualificationWorking.Of(plan, plan.Tensile!));
        Assert.Null(QualificationWorking.Of(plan, plan.Former!, Content("2219", "T87")));
    }

    [Fact]
    public void OfFormer_ByThickness_ShowsItsMultiple()
    {
        // 7 t for group 23 in T6: 7 × 3 = 21 mm.
        var plan = Plan("6061", "T6", SampleQualifications.Request);

        var working = QualificationWorking.Of(plan, plan.Former!, Content("6061", "T6"))!;

        Assert.Equal("d = k·t", working.Formula);
        Assert.Equal([3.0, 7.0], working.Inputs.Select(v => v.Value));
        Assert.Equal(21, Assert.Single(working.Results).Value, 1e-9);
    }

    private QualificationPlan Plan(string alloy, string temper, PlanRequest request) =>
        Accept.Value(
            PlanComputation.Compute(Content(alloy, temper), request, SampleQualifications.Tables)
        );

    private ProcedureContent Content(string alloy, string temper) =>
        SampleProcedures.Content(_design) with
        {
            Alloy = alloy,
            Temper = temper,
            JointType = "butt",
            Details = new ProcedureDetails { PostWeld = PostWeldCondition.NaturalAgeing },
        };
}
