using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Procedures;
using WeldTrace.Engineering.Quantities;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Limits;

/// <summary>Values of the tables that come with the program, against what the sources print.</summary>
public sealed class ShippedLimitsTests
{
    [Theory]
    [InlineData("1050", "H14", PostWeldCondition.AsWelded, 1.0, "O")]
    [InlineData("5083", "H321", PostWeldCondition.AsWelded, 1.0, "O")]
    [InlineData("6061", "T4", PostWeldCondition.NaturalAgeing, 0.7, "actual")]
    [InlineData("6082", "T4", PostWeldCondition.ArtificialAgeing, 0.7, "T6")]
    [InlineData("6061", "T6", PostWeldCondition.NaturalAgeing, 0.6, "actual")]
    [InlineData("6061", "T5", PostWeldCondition.ArtificialAgeing, 0.7, "actual")]
    [InlineData("7020", "T4", PostWeldCondition.NaturalAgeing, 0.95, "actual")]
    [InlineData("7020", "T4", PostWeldCondition.ArtificialAgeing, 0.75, "T6")]
    [InlineData("7020", "T6", PostWeldCondition.NaturalAgeing, 0.75, "actual")]
    [InlineData("7020", "T6", PostWeldCondition.ArtificialAgeing, 0.75, "actual")]
    public void Tensile_MatchesTable2_EN14532_3_2004(
        string alloy,
        string temper,
        PostWeldCondition condition,
        double factor,
        string baseTemper
    )
    {
        var found = TensileFactors.Find(
            SampleLimits.Of(ShippedLimits.Tensile),
            Group(alloy),
            temper,
            condition
        );

        Assert.Equal(new TensileFactor((decimal)factor, baseTemper), found);
    }

    [Theory]
    [InlineData("2219", "T87")]
    [InlineData("2014", "T6")]
    [InlineData("2195", "T8")]
    [InlineData("7075", "T6")]
    [InlineData("6061", "T651")]
    public void Tensile_OutsideTheTable_HasNoFactor_EN14532_3_2004_NotesBAndE(
        string alloy,
        string temper
    ) =>
        Assert.Null(
            TensileFactors.Find(
                SampleLimits.Of(ShippedLimits.Tensile),
                Group(alloy),
                temper,
                PostWeldCondition.NaturalAgeing
            )
        );

    [Theory]
    [InlineData("1050", "O", 2)]
    [InlineData("1050", "H22", 3)]
    [InlineData("1050", "H18", 4)]
    [InlineData("5754", "H16", 4)]
    [InlineData("5754", "H19", 5)]
    [InlineData("5083", "O", 6)]
    [InlineData("5083", "H38", 6)]
    [InlineData("6061", "T4", 6)]
    [InlineData("6061", "T6", 7)]
    [InlineData("7020", "T7", 8)]
    public void Bend_MatchesTable_BSEN288_4(string alloy, string temper, int times)
    {
        var former = BendFormers.Find(SampleLimits.Of(ShippedLimits.Bend), Group(alloy), temper);

        Assert.Equal(times * 3.0, former?.Diameter(3, null));
    }

    [Fact]
    public void Bend_ByElongation_FollowsTheFormula()
    {
        // 100·3/10 − 3 = 27 mm for A = 10 %, worked by hand; nothing at 5 % or below.
        var former = BendFormers.Find(SampleLimits.Of("BEND-25239"), null, "T87");

        Assert.Equal(27, former!.Diameter(3, 10)!.Value, 1e-9);
        Assert.Null(former.Diameter(3, 5));
        Assert.Null(former.Diameter(3, null));
    }

    [Theory]
    [InlineData(1.5, 0.225)]
    [InlineData(2, 0.40)]
    [InlineData(6, 0.80)]
    [InlineData(12, 1.40)]
    public void Underfill_WorkedCheckOfISO25239_5_2011(double thickness, double limit) =>
        Assert.Equal((decimal)limit, Limit("underfill", thickness));

    [Theory]
    [InlineData("crack", 6, 0)]
    [InlineData("incomplete penetration", 6, 0)]
    [InlineData("excess penetration", 6, 3)]
    [InlineData("linear misalignment", 5, 1)]
    [InlineData("linear misalignment", 20, 2)]
    [InlineData("cavity", 6, 1.2)]
    [InlineData("cavity", 30, 4)]
    public void Imperfections_ISO25239_5_2011_FromMemory(
        string name,
        double thickness,
        double limit
    ) => Assert.Equal((decimal)limit, Limit(name, thickness));

    [Fact]
    public void Imperfections_HookHasNoLimitThere_SoTheDesignMustGiveOne() =>
        Assert.Null(Limit("hook", 6));

    [Theory]
    [InlineData(11.9, "root bend 2, face bend 2")]
    [InlineData(12, "side bend 4")]
    public void Extent_BSEN288_4_SideBendsFromTwelveMillimetres(double thickness, string bends)
    {
        var tests = ExtentOfTesting.Of(
            SampleLimits.Of("EXTENT-288"),
            "butt",
            "23.1",
            Length.FromMillimetres(thickness)
        );

        Assert.Equal(
            $"visual 1, radiographic or ultrasonic 1, penetrant 1, transverse tensile 2, {bends}, macro section 1, micro section 1",
            string.Join(", ", tests.Select(t => $"{t.Test} {t.Number}"))
        );
    }

    [Fact]
    public void Shipped_EachTable_PassesItsOwnChecksAndIsUnchecked()
    {
        foreach (var table in SampleLimits.Fresh())
        {
            Assert.False(table.IsChecked);
            var again = table.Revise(
                table.Text,
                "as before",
                SamplePeople.QualityManager,
                SampleTime.Start
            );
            Assert.True(again.IsAccepted, string.Join(' ', again.Refusals.Select(r => r.Sentence)));
        }
    }

    [Fact]
    public void Shipped_TablesFromMemory_SaySo() =>
        Assert.Equal(
            ["BEND-25239", "EXTENT-25239", "GROUPS-15608", "IMPERF-25239", "TENSILE-25239"],
            SampleLimits
                .Shipped.Where(t => t.Evidence == LimitEvidence.FromMemory)
                .Select(t => t.Code)
                .Order()
        );

    private static string? Group(string alloy) =>
        MaterialGroups.Of(SampleLimits.Of(ShippedLimits.Groups), alloy);

    private static decimal? Limit(string name, double thickness) =>
        ImperfectionLimits.Of(
            SampleLimits.Of(ShippedLimits.Imperfections),
            name,
            Length.FromMillimetres(thickness)
        );
}
