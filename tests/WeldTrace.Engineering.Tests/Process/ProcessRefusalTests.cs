using WeldTrace.Engineering.Process;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Tests.Process;

public sealed class ProcessRefusalTests
{
    private static readonly RotationSpeed Spindle = RotationSpeed.FromRevolutionsPerMinute(800);
    private static readonly Speed Travel = Speed.FromMillimetresPerMinute(152.4);
    private static readonly Temperature Liquidus = Temperature.FromDegreesCelsius(652);

    [Fact]
    public void Kinematics_StandingSpindle_Refuses() =>
        Assert.Equal(
            "spindle speed",
            Assert
                .Single(
                    WeldKinematics.Compute(default, Travel, Length.FromMillimetres(18)).Refusals
                )
                .Where
        );

    [Fact]
    public void Power_ShareAboveOne_Refuses() =>
        Assert.True(
            PowerInput.Compute(Spindle, Torque.FromNewtonMetres(25), Travel, 1.2).IsRefused
        );

    [Fact]
    public void HeatIndex_Band_MatchesCheckedEnds()
    {
        var heat = HeatIndex.Compute(Spindle, Travel, Liquidus).Value;
        Assert.Equal(465.8886189, heat.Low.DegreesCelsius, 1e-6);
        Assert.Equal(513.7443657, heat.Middle.DegreesCelsius, 1e-6);
        Assert.Equal(563.6254338, heat.High.DegreesCelsius, 1e-6);
        Assert.False(heat.ReachesSolidus);
    }

    [Fact]
    public void HeatIndex_BandAboveSolidus_IsCappedAndSaysSo()
    {
        var solidus = Temperature.FromDegreesCelsius(540);
        var heat = HeatIndex.Compute(Spindle, Travel, Liquidus, solidus).Value;
        Assert.Equal(540, heat.High.DegreesCelsius, 1e-9);
        Assert.True(heat.ReachesSolidus);
        Assert.False(heat.Working.Validity.IsWithin);
    }

    [Fact]
    public void MovingSource_InsideTheShoulder_Refuses()
    {
        var result = MovingSource.Compute(
            Power.FromWatts(2000),
            Travel,
            new(167, 2700, 896),
            Length.FromMillimetres(6),
            new(Length.Zero, Length.FromMillimetres(8), Length.Zero),
            Length.FromMillimetres(9)
        );
        Assert.Equal(RefusalReason.OutsideValidity, Assert.Single(result.Refusals).Reason);
    }

    [Fact]
    public void MovingSource_AlmostStanding_Refuses()
    {
        var result = MovingSource.Compute(
            Power.FromWatts(2000),
            Speed.FromMillimetresPerMinute(0.001),
            new(167, 2700, 896),
            Length.FromMillimetres(6),
            new(Length.Zero, Length.FromMillimetres(15), Length.Zero),
            Length.FromMillimetres(9)
        );
        Assert.Equal("travel speed", Assert.Single(result.Refusals).Where);
    }

    [Fact]
    public void AnalyticHeat_PinWiderThanShoulder_Refuses()
    {
        var tool = new ToolGeometry(
            Length.FromMillimetres(3),
            Length.FromMillimetres(9),
            Length.FromMillimetres(4),
            default
        );
        Assert.Equal(
            "shoulder radius",
            Assert
                .Single(AnalyticHeat.Compute(tool, Spindle, Pressure.FromMegapascals(40)).Refusals)
                .Where
        );
    }
}
