using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tests.States;
using WeldTrace.Domain.Welding;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Welding;

/// <summary>The seven checks of ISO 25239-5:2020 4.12.2 before a run.</summary>
public sealed class PreWeldChecksTests
{
    [Fact]
    public void Of_AnyProcedure_AsksTheSevenOfTheClauseInItsOrder() =>
        Assert.Equal(
            [
                "Operator's certificate",
                "Procedure",
                "Parent material and temper",
                "Joint preparation",
                "Fit-up, jigging and tacking",
                "Parameters set as in the procedure",
                "Preheat and interpass temperature",
            ],
            Of(new SampleShop()).Select(c => c.Title)
        );

    /// <summary>A procedure that lays down nothing but windows leaves preparation, fit-up and setting to the welder's eyes.</summary>
    [Fact]
    public void Of_ProcedureWithoutDetails_LeavesToTheWelderWhatNoRecordAnswers()
    {
        var checks = Of(new SampleShop());

        Assert.Equal(
            [PreWeldItem.JointPreparation, PreWeldItem.FitUp, PreWeldItem.Parameters],
            checks.Where(c => c.NeedsWelder).Select(c => c.Item)
        );
        Assert.Contains(
            "spindle speed 800 rev/min, travel speed 200 mm/min",
            checks[5].Text,
            StringComparison.Ordinal
        );
        Assert.Equal(("F2", "The procedure asks for none."), (checks[6].RuleId, checks[6].Text));
    }

    /// <summary>With a time limit the cleaning record answers; an interpass temperature must be looked at.</summary>
    [Fact]
    public void Of_ProcedureWithLimits_ReadsTheRecordsAndAsksForTheTemperature()
    {
        var checks = Of(
            Limited(
                new(ProcedureField.Interpass, "below 60 °C", false),
                new(ProcedureField.Fixture, "Clamp ring CR-2", false)
            )
        );

        Assert.Equal("F8", checks[3].RuleId);
        Assert.Contains("Clamp ring CR-2.", checks[4].Text, StringComparison.Ordinal);
        Assert.True(checks[6].NeedsWelder);
        Assert.Contains("below 60 °C.", checks[6].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_RuleForbids_TellsItsReason()
    {
        var shop = new SampleShop();
        shop.Certificates.Clear();

        Assert.Contains(
            "holds no FSW operator certificate",
            Of(shop)[0].Text,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData(PreWeldItem.JointPreparation)]
    [InlineData(PreWeldItem.FitUp)]
    [InlineData(PreWeldItem.Parameters)]
    public void Start_CheckNotConfirmed_StartsNothing(PreWeldItem left)
    {
        var shop = new SampleShop();
        var facts = shop.Facts();
        var watch = new RecordWatch(shop.Vessel);

        var run = WeldRun.Start(
            Guid.CreateVersion7(SampleTime.Start),
            facts,
            facts.Pass.Travel,
            [.. Enum.GetValues<PreWeldItem>().Where(i => i != left)]
        );

        watch.AssertRefused("pre-weld", run.Refusals);
        Assert.Equal(left.ToString(), Assert.Single(run.Refusals).Field);
    }

    [Fact]
    public void Start_AllConfirmed_KeepsTheAnswers()
    {
        var shop = new SampleShop();

        var run = shop.Running();

        Assert.Equal(Of(new SampleShop()), run.Checks);
    }

    private static IReadOnlyList<PreWeldCheck> Of(SampleShop shop)
    {
        var facts = shop.Facts();
        return PreWeldChecks.Of(facts, WeldGate.Judge(facts));
    }

    private static SampleShop Limited(params IReadOnlyList<Particular> particulars)
    {
        var shop = new SampleShop();
        shop.Procedure = SampleProcedures.Released(
            shop.ToolDesign,
            content: SampleProcedures.Content(shop.ToolDesign) with
            {
                Details = ProcedureDetails.None with
                {
                    CleaningLimit = new Measured("4", "h"),
                    Particulars = particulars,
                },
            }
        );
        return shop;
    }
}
