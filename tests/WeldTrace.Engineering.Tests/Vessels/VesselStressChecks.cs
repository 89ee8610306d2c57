using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Tests.Checks;
using WeldTrace.Engineering.Vessels;

namespace WeldTrace.Engineering.Tests.Vessels;

/// <summary>How the rows of stress, burst, margin and expansion are computed.</summary>
internal static class VesselStressChecks
{
    public static CheckTable AddTo(CheckTable table) =>
        table
            .Number(
                "D1",
                "hoop stress, inner surface",
                row => Thick(row).HoopAt(Thick(row).InnerRadius).Megapascals
            )
            .Number(
                "D1",
                "radial stress, inner surface",
                row => Thick(row).RadialAt(Thick(row).InnerRadius).Megapascals
            )
            .Number(
                "D1",
                "hoop stress, outer surface",
                row => Thick(row).HoopAt(Thick(row).OuterRadius).Megapascals
            )
            .Number(
                "D1",
                "radial stress, outer surface",
                row => Thick(row).RadialAt(Thick(row).OuterRadius).Megapascals
            )
            .Number("D1", "axial stress", row => Thick(row).Axial.Megapascals)
            .Number(
                "D1",
                "von Mises stress, inner surface",
                row => Thick(row).VonMisesAt(Thick(row).InnerRadius).Megapascals
            )
            .Number(
                "D1",
                "von Mises stress, outer surface",
                row => Thick(row).VonMisesAt(Thick(row).OuterRadius).Megapascals
            )
            .Number("D1", "axial stress, published hand value", row => Thick(row).Axial.Megapascals)
            .Number(
                "D1",
                "hoop stress, inner surface (published closed form)",
                row => Thick(row).HoopAt(Thick(row).InnerRadius).Megapascals
            )
            .Number("D2", "hoop, inner-radius formula", row => Thin(row).Hoop.Megapascals)
            .Number(
                "D2",
                "hoop, mean-radius formula",
                row => Thin(row).HoopAtMeanRadius.Megapascals
            )
            .Number("D2", "axial, inner-radius formula", row => Thin(row).Axial.Megapascals)
            .Number(
                "D2",
                "sphere membrane stress, inner-radius formula",
                row => Thin(row).Sphere.Megapascals
            )
            .Number(
                "D2",
                "average hoop stress (equals p*ri/t exactly)",
                row => Thick(row).MeanHoop.Megapascals
            )
            .Number(
                "D2",
                "von Mises (radial stress neglected)",
                row => Thin(row).VonMises.Megapascals
            )
            .Number(
                "D3",
                "tangential stress, inner",
                row => Ball(row).TangentialAt(Ball(row).InnerRadius).Megapascals
            )
            .Number(
                "D3",
                "tangential stress, outer",
                row => Ball(row).TangentialAt(Ball(row).OuterRadius).Megapascals
            )
            .Number(
                "D3",
                "von Mises, inner",
                row => Ball(row).VonMisesAt(Ball(row).InnerRadius).Megapascals
            )
            .Number(
                "D3",
                "integral of tangential stress over the cut",
                row => Ball(row).CutForce.Newtons / 1e6
            )
            .Number("D8", "burst, mean diameter", row => Burst(row).MeanDiameter.Megapascals)
            .Number("D8", "burst, Barlow (outside diameter)", row => Burst(row).Barlow.Megapascals)
            .Number("D8", "burst, Faupel", row => Burst(row).Faupel.Megapascals)
            .Number("D8", "burst, Svensson cylinder", row => Burst(row).Svensson.Megapascals)
            .Number(
                "D8",
                "burst, thin-wall von Mises power law",
                row => Burst(row).ThinPowerLaw.Megapascals
            )
            .Number("D8", "burst, exact power law", row => Burst(row).ExactPowerLaw.Megapascals)
            .Number(
                "D8",
                "burst, mean diameter with weld factor",
                row => Burst(row).MeanDiameter.Megapascals
            )
            .Number(
                "D9",
                "burst, sphere mean diameter",
                row => BallBurst(row).MeanDiameter.Megapascals
            )
            .Number(
                "D9",
                "burst, thin sphere power law",
                row => BallBurst(row).ThinPowerLaw.Megapascals
            )
            .Number("D12.4", "margin of safety", BurstMargin)
            .Number("D12", "margin of safety", Margin)
            .Number(
                "D13",
                "elastic volumetric strain of the cylindrical bore",
                row => Growth(row).Strain
            )
            .Number(
                "D13",
                "elastic volumetric expansion",
                row => Growth(row).Expansion.CubicCentimetres
            );

    private static ThickCylinderStress Thick(CheckRow row) =>
        ThickCylinderStress
            .Compute(
                Mpa(row.Or("p_i_MPa", row.Or("p_MPa", 0))),
                Mpa(row.Or("p_o_MPa", 0)),
                Length.FromMetres(row["r_i_m"]),
                Length.FromMetres(row.Has("r_o_m") ? row["r_o_m"] : row["r_i_m"] + row["t_m"])
            )
            .Value;

    private static ThinWallStress Thin(CheckRow row) =>
        ThinWallStress
            .Compute(
                Mpa(row["p_MPa"]),
                Length.FromMetres(row["r_i_m"]),
                Length.FromMetres(row["t_m"])
            )
            .Value;

    private static ThickSphereStress Ball(CheckRow row) =>
        ThickSphereStress
            .Compute(
                Mpa(row["p_MPa"]),
                Length.FromMetres(row["r_i_m"]),
                Length.FromMetres(row["r_o_m"])
            )
            .Value;

    private static CylinderBurst Burst(CheckRow row) =>
        CylinderBurst
            .Compute(
                Wall(row),
                Length.FromMillimetres(row["Di_mm"]),
                Length.FromMillimetres(row["t_mm"])
            )
            .Value;

    private static SphereBurst BallBurst(CheckRow row) =>
        SphereBurst
            .Compute(
                Wall(row),
                Length.FromMillimetres(row["Di_mm"]),
                Length.FromMillimetres(row["t_mm"])
            )
            .Value;

    private static BurstMaterial Wall(CheckRow row) =>
        new(
            Mpa(row.Or("sigma_y_MPa", 100)),
            Mpa(row["sigma_u_MPa"]),
            row["n"],
            row.Or("weld_factor", 1)
        );

    private static double Margin(CheckRow row) =>
        MarginOfSafety
            .Compute(Mpa(row["allowable_MPa"]), Mpa(row["applied_MPa"]), row["FS"])
            .Value.Value;

    private static double BurstMargin(CheckRow row) =>
        MarginOfSafety
            .Compute(Mpa(row["p_burst_MPa"]), Mpa(row["MEOP_MPa"]), row["burst_factor"])
            .Value.Value;

    private static ElasticExpansion Growth(CheckRow row)
    {
        var radius = row["r_i_m"];
        return ElasticExpansion
            .Compute(
                Mpa(row["p_MPa"]),
                Mpa(row["E_MPa"]),
                row["nu"],
                Length.FromMetres(radius),
                Length.FromMetres(row["r_o_m"]),
                Volume.FromCubicMetres(Math.PI * radius * radius * row["L_m"])
            )
            .Value;
    }

    private static Pressure Mpa(double value) => Pressure.FromMegapascals(value);
}
