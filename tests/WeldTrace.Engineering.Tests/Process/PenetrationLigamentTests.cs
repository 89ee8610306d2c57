using WeldTrace.Engineering.Process;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Tests.Process;

/// <summary>Worked by hand from the definition in AWS D17.3/D17.3M:2016 clause 3: distance from probe tip to anvil.</summary>
public sealed class PenetrationLigamentTests
{
    [Theory]
    [InlineData(6.0, 5.6, null, null, 0.4)]
    [InlineData(6.0, 5.6, null, 0.15, 0.25)]
    [InlineData(6.0, 5.6, 5.8, 0.15, 0.2)]
    [InlineData(3.0, 3.0, 3.2, null, -0.2)]
    public void Compute_HandWorked_SubtractsTheDepthOfTheTip(
        double thickness,
        double pin,
        double? plunge,
        double? heel,
        double expected
    )
    {
        var ligament = PenetrationLigament.Compute(
            Length.FromMillimetres(thickness),
            Length.FromMillimetres(pin),
            plunge is { } z ? Length.FromMillimetres(z) : null,
            heel is { } h ? Length.FromMillimetres(h) : null
        );

        Assert.Equal(expected, ligament.Value.Ligament.Millimetres, 1e-9);
        Assert.Equal(expected > 0, ligament.Working.Validity.IsWithin);
    }

    [Fact]
    public void Compute_NoThickness_IsRefused() =>
        Assert.True(PenetrationLigament.Compute(Length.Zero, Length.FromMillimetres(5)).IsRefused);
}
