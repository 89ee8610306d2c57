using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Vessels;

namespace WeldTrace.Engineering.Tests.Vessels;

/// <summary>Worked by hand from the definition; the figure itself is common practice, no source.</summary>
public sealed class VesselPerformanceTests
{
    /// <summary>300 bar · 10 l = 300 kJ; 5 kg weigh 49.03325 N; 300 kJ / 49.03325 N = 6118.297 m.</summary>
    [Fact]
    public void Factor_HandWorkedVessel_IsWorkOverWeight() =>
        Assert.Equal(
            300_000 / 49.03325,
            VesselPerformance
                .Compute(Pressure.FromBar(300), Volume.FromLitres(10), Mass.FromKilograms(5))
                .Value.Factor.Metres,
            1e-9
        );

    [Fact]
    public void Compute_NoMass_IsRefused() =>
        Assert.Equal(
            "mass",
            VesselPerformance
                .Compute(Pressure.FromBar(300), Volume.FromLitres(10), Mass.Zero)
                .Refusals.Single()
                .Where
        );
}
