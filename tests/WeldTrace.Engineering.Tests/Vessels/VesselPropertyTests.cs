using CsCheck;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Vessels;

namespace WeldTrace.Engineering.Tests.Vessels;

/// <summary>Laws that hold for every vessel; mass laws of thin shells (3/2 and 2 times ρ·p·V/σ) are standard results.</summary>
public sealed class VesselPropertyTests
{
    [Fact]
    public void ThickCylinder_ThinnerWall_TendsToThinWall() =>
        Gen.Select(Gen.Double[0.01, 2], Gen.Double[1e-5, 1e-3])
            .Sample(
                (radius, ratio) =>
                {
                    var (inner, wall) = (
                        Length.FromMetres(radius),
                        Length.FromMetres(radius * ratio)
                    );
                    var pressure = Pressure.FromMegapascals(10);
                    var thin = ThinWallStress.Compute(pressure, inner, wall).Value;
                    var thick = ThickCylinderStress
                        .Compute(pressure, Pressure.Zero, inner, inner + wall)
                        .Value;
                    Assert.InRange(Math.Abs((thick.HoopAt(inner) / thin.Hoop) - 1), 0, ratio);
                    Assert.InRange(Math.Abs((thick.Axial / thin.Axial) - 1), 0, ratio);
                    Assert.Equal(1, thick.MeanHoop / thin.Hoop, 1e-8);
                }
            );

    [Fact]
    public void AsmeHoop_LowPressure_TendsToBarlow() =>
        Gen.Double[1e-6, 1e-3]
            .Sample(ratio =>
            {
                var design = new DesignCase(
                    Pressure.FromMegapascals(100 * ratio),
                    Length.FromMillimetres(100),
                    Pressure.FromMegapascals(100),
                    1
                );
                var thickness = AsmeThickness.CylinderHoop(design).Value.Millimetres;
                Assert.InRange(thickness / (100 * ratio), 1, 1 + ratio);
            });

    [Fact]
    public void Shapes_ThinWalls_WeighThreeHalvesAndTwo()
    {
        var (volume, density) = (Volume.FromLitres(100), 2700.0);
        var design = new DesignCase(
            Pressure.FromMegapascals(0.01),
            Length.FromMillimetres(20),
            Pressure.FromMegapascals(100),
            1
        );
        var shapes = ShapeComparison.Compute(volume, design, density).Value;
        var unit =
            density * design.Pressure.Pascals * volume.CubicMetres / design.AllowableStress.Pascals;
        Assert.Equal(1.5, shapes.Sphere.ShellMass.Kilograms / unit, 1e-3);
        Assert.Equal(2.0, shapes.Cylinder.ShellMass.Kilograms / unit, 1e-3);
    }

    [Fact]
    public void Shapes_AnyVolume_HoldExactlyThatVolume() =>
        Gen.Select(Gen.Double[1, 50], Gen.Double[30, 60])
            .Sample(
                (litres, millimetres) =>
                {
                    var design = new DesignCase(
                        Pressure.FromMegapascals(20),
                        Length.FromMillimetres(millimetres),
                        Pressure.FromMegapascals(110),
                        0.8
                    );
                    var cylinder = ShapeComparison
                        .Compute(Volume.FromLitres(litres), design, 2700)
                        .Value.Cylinder;
                    var radius = cylinder.InsideDiameter.Metres / 2;
                    var held =
                        Math.PI
                        * radius
                        * radius
                        * (cylinder.CylinderLength.Metres + (4 * radius / 3));
                    Assert.Equal(litres, held * 1000, 1e-9);
                }
            );

    [Fact]
    public void CylinderBurst_AnyWall_WeldFactorScalesEveryFormula() =>
        Gen.Select(Gen.Double[0.03, 0.3], Gen.Double[1, 20], Gen.Double[0.3, 1])
            .Sample(
                (n, wall, factor) =>
                {
                    var parent = new BurstMaterial(
                        Pressure.FromMegapascals(276),
                        Pressure.FromMegapascals(310),
                        n
                    );
                    var sound = Predict(parent, wall);
                    var welded = Predict(parent with { WeldFactor = factor }, wall);
                    Assert.Equal(factor, welded.Lowest / sound.Lowest, 1e-9);
                    Assert.Equal(factor, welded.ExactPowerLaw / sound.ExactPowerLaw, 1e-9);
                    Assert.InRange(sound.Svensson / sound.ExactPowerLaw, 0.93, 1);
                },
                iter: 50
            );

    private static CylinderBurst Predict(BurstMaterial wall, double millimetres) =>
        CylinderBurst
            .Compute(wall, Length.FromMillimetres(150), Length.FromMillimetres(millimetres))
            .Value;
}
