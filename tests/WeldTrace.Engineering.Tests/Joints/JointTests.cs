using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.Joints;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Tests.Joints;

public sealed class JointTests
{
    [Theory]
    [InlineData("0.66", Verdict.Pass)]
    [InlineData("0.67", Verdict.Pass)]
    [InlineData("0.68", Verdict.Fail)]
    public void Efficiency_AgainstLimit_JudgesTheSmallest(string least, Verdict verdict)
    {
        var result = Compute(WrittenLimit.Parse(least, ""), 318, 330);
        Assert.Equal(verdict, result.Value.Judgement!.Verdict);
    }

    [Theory]
    [InlineData(500, false)]
    [InlineData(150, false)]
    [InlineData(318, true)]
    public void Efficiency_OddValue_AsksToCheckTheEntries(double megapascals, bool isPlausible)
    {
        var result = Compute(null, megapascals).Value;
        Assert.Equal(isPlausible, result.IsPlausible);
        Assert.Equal(isPlausible, result.Working.Validity.IsWithin);
    }

    [Fact]
    public void Efficiency_NoSpecimen_Refuses() => Assert.True(Compute(null).IsRefused);

    [Fact]
    public void RoundStrength_TenMillimetres_MatchesHandCalculation() =>
        Assert.Equal(
            254.6479089,
            TensileSpecimen
                .RoundStrength(Force.FromKilonewtons(20), Length.FromMillimetres(10))
                .Megapascals,
            1e-6
        );

    [Fact]
    public void Hardness_SoftToTheEnd_HasNoWidthAndSaysSo()
    {
        var traverse = Traverse((0, 100), (2, 120), (4, 150)).Value;
        Assert.Null(traverse.SoftenedWidth);
        Assert.False(traverse.Working.Validity.IsWithin);
    }

    [Fact]
    public void Hardness_PositionsOutOfOrder_Refuses() =>
        Assert.Equal(
            "positions",
            Assert.Single(Traverse((0, 150), (4, 100), (2, 150)).Refusals).Where
        );

    [Fact]
    public void TypicalEfficiency_KnownAlloy_GivesTheRange()
    {
        Assert.Equal(0.65, PublishedJoints.TypicalEfficiency("2219-T87")!.Low);
        Assert.Null(PublishedJoints.TypicalEfficiency("2219-T6"));
        Assert.Null(PublishedJoints.TypicalEfficiency(null));
    }

    private static Computed<JointEfficiency> Compute(
        WrittenLimit? least,
        params double[] megapascals
    ) =>
        JointEfficiency.Compute(
            [.. megapascals.Select(Specimen)],
            Pressure.FromMegapascals(476),
            ParentReference.SamePlate,
            least
        );

    private static TensileSpecimen Specimen(double megapascals) =>
        new(
            Force.FromNewtons(megapascals * 100),
            Length.FromMillimetres(10),
            Length.FromMillimetres(10)
        );

    private static Computed<HardnessTraverse> Traverse(
        params (double X, double Hardness)[] points
    ) =>
        HardnessTraverse.Compute(
            [.. points.Select(p => new HardnessPoint(Length.FromMillimetres(p.X), p.Hardness))],
            151
        );
}
