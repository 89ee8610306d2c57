using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.TestSafety;

namespace WeldTrace.Domain.Testing;

/// <summary>What a pressure test of a design stores in energy, and how far people stay away (floor rule F14).</summary>
/// <param name="Highest">Gauge pressure of the highest stage.</param>
/// <param name="Energy">Stored energy at that pressure.</param>
/// <param name="Tnt">Its TNT equivalent.</param>
/// <param name="StandOff">Least distance for a test with gas; null for a liquid.</param>
/// <param name="Workings">How it was worked out.</param>
public sealed record TestHazard(
    Pressure Highest,
    Energy Energy,
    Mass Tnt,
    Length? StandOff,
    IReadOnlyList<Working> Workings
)
{
    private const double WaterCompressibilityPerPascal = 4.5e-10;
    private const double StandardAtmosphereBar = 1.01325;

    /// <summary>Computes the hazard of the highest stage; null when the design has no stage with pressure.</summary>
    /// <param name="content">Design.</param>
    public static TestHazard? Of(DesignContent content)
    {
        ArgumentNullException.ThrowIfNull(content);
        var plan = content.Pressures;
        var highest = plan.Meop * (double)plan.Stages.Max(s => s.FactorOnMeop);
        if (highest <= Pressure.Zero)
        {
            return null;
        }

        return plan.IsLiquid ? OfLiquid(content, highest) : OfGas(content, highest);
    }

    private static TestHazard? OfLiquid(DesignContent content, Pressure highest) =>
        LiquidEnergy
            .Compute(highest, content.Volume, WaterCompressibilityPerPascal, Volume.Zero)
            .TryGet(out var energy)
            ? new(highest, energy.Total, TntEquivalent.Of(energy.Total), null, [energy.Working])
            : null;

    private static TestHazard? OfGas(DesignContent content, Pressure highest)
    {
        var atmosphere = Pressure.FromBar(StandardAtmosphereBar);
        return
            GasEnergy
                .Compute(new GasCharge(highest + atmosphere, atmosphere, content.Volume))
                .TryGet(out var energy)
            && Engineering
                .TestSafety.StandOff.Compute(energy.Isentropic, StandOffRule.Pcc2Of2022)
                .TryGet(out var distance)
            ? new(
                highest,
                energy.Isentropic,
                distance.Tnt,
                distance.Least,
                [energy.Working, distance.Working]
            )
            : null;
    }
}
