using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.PressureTesting;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Vessels;

namespace WeldTrace.Engineering.Tests.Vessels;

public sealed class VesselRefusalTests
{
    private static readonly DesignCase Design = new(
        Pressure.FromMegapascals(20),
        Length.FromMillimetres(75),
        Pressure.FromMegapascals(110),
        1
    );

    [Fact]
    public void AsmeHoop_AboveItsPressureLimit_RefusesAndNamesTheThickForm()
    {
        var refusal = Assert.Single(
            AsmeThickness
                .CylinderHoop(Design with { Pressure = Pressure.FromMegapascals(43) })
                .Refusals
        );
        Assert.Equal(RefusalReason.OutsideValidity, refusal.Reason);
        Assert.Equal("Use the thick-wall form.", refusal.Mend);
        Assert.Contains("42.35 MPa", refusal.What, StringComparison.Ordinal);
    }

    [Fact]
    public void AsmeThick_AboveTheHoopLimit_StillComputes() =>
        Assert.Equal(
            75 * (Math.Exp(43.0 / 110) - 1),
            AsmeThickness
                .CylinderThick(Design with { Pressure = Pressure.FromMegapascals(43) })
                .Value.Millimetres,
            1e-9
        );

    [Fact]
    public void EnCylinder_WallAboveItsRatio_Refuses() =>
        Assert.Equal(
            RefusalReason.OutsideValidity,
            Assert
                .Single(
                    EnThickness
                        .Cylinder(Design with { Pressure = Pressure.FromMegapascals(80) })
                        .Refusals
                )
                .Reason
        );

    [Fact]
    public void Iso7866_PressureThatNoWallHolds_Refuses() =>
        Assert.True(
            GasCylinderRules
                .WallIso7866(
                    Length.FromMillimetres(140),
                    Pressure.FromMegapascals(230),
                    Pressure.FromMegapascals(120),
                    0.85
                )
                .IsRefused
        );

    [Fact]
    public void ThinWall_ThickWall_SaysSoInTheWorking()
    {
        var stress = ThinWallStress.Compute(
            Design.Pressure,
            Design.InsideRadius,
            Length.FromMillimetres(8)
        );
        Assert.False(stress.Working.Validity.IsWithin);
    }

    [Fact]
    public void ThickCylinder_RadiiSwapped_Refuses() =>
        Assert.Equal(
            "outer radius",
            Assert
                .Single(
                    ThickCylinderStress
                        .Compute(
                            Design.Pressure,
                            Pressure.Zero,
                            Length.FromMetres(2),
                            Length.FromMetres(1)
                        )
                        .Refusals
                )
                .Where
        );

    [Fact]
    public void Ladder_FactorsWithoutSource_Refuses() =>
        Assert.Equal(
            "source of the factors",
            Assert
                .Single(PressureLadder.Compute(Design.Pressure, new(1.25, 1.5, " ")).Refusals)
                .Where
        );

    [Fact]
    public void Margin_BelowZero_Fails()
    {
        Assert.Equal(Verdict.Fail, Margin(230));
        Assert.Equal(Verdict.Pass, Margin(180));

        static Verdict Margin(double applied) =>
            MarginOfSafety
                .Compute(Pressure.FromMegapascals(310), Pressure.FromMegapascals(applied), 1.4)
                .Value.Verdict;
    }

    [Theory]
    [InlineData(6.24, Verdict.Pass)]
    [InlineData(6.6, Verdict.Fail)]
    public void VolumetricExpansion_AgainstTenPercent_GivesTheVerdict(
        double permanent,
        Verdict verdict
    )
    {
        var result = VolumetricExpansion.Evaluate(
            Volume.FromCubicCentimetres(62.4),
            Volume.FromCubicCentimetres(permanent),
            0,
            WrittenLimit.Parse("10", "%")
        );
        Assert.Equal(verdict, result.Value.Judgement.Verdict);
        Assert.Equal(62.4 - permanent, result.Value.Elastic.CubicCentimetres, 1e-9);
    }

    [Fact]
    public void Burst_YieldAboveUltimate_Refuses()
    {
        var wall = new BurstMaterial(
            Pressure.FromMegapascals(400),
            Pressure.FromMegapascals(300),
            0.1
        );
        Assert.Equal(
            "yield strength",
            Assert
                .Single(
                    CylinderBurst
                        .Compute(wall, Length.FromMillimetres(150), Length.FromMillimetres(6))
                        .Refusals
                )
                .Where
        );
    }

    [Fact]
    public void Burst_SearchOfTheExactPowerLaw_ReportsStepsAndResidual()
    {
        var wall = new BurstMaterial(
            Pressure.FromMegapascals(276),
            Pressure.FromMegapascals(310),
            0.06
        );
        var exact = CylinderBurst
            .Compute(wall, Length.FromMillimetres(150), Length.FromMillimetres(6.5))
            .Value.Exact;
        Assert.InRange(exact.Iterations, 10, 199);
        Assert.InRange(exact.Residual, 0, 1e-9);
    }
}
