using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.TestSafety;

namespace WeldTrace.Domain.Testing;

/// <summary>What a test of a design stores in energy, and how far people stay away (floor rule F14).</summary>
/// <param name="Highest">Highest gauge pressure of the test.</param>
/// <param name="IsGas">Whether the test is done with gas.</param>
/// <param name="Energy">Stored energy at that pressure.</param>
/// <param name="Tnt">Its TNT equivalent.</param>
/// <param name="StandOff">Least distance for a test with gas; null for a liquid.</param>
/// <param name="WithTheOther">Energy that the same vessel would store with liquid in place of gas, or gas in place of liquid.</param>
/// <param name="Workings">How it was worked out.</param>
public sealed record TestHazard(
    Pressure Highest,
    bool IsGas,
    Energy Energy,
    Mass Tnt,
    Length? StandOff,
    Energy? WithTheOther,
    IReadOnlyList<Working> Workings
)
{
    private const double WaterCompressibilityPerPascal = 4.5e-10;
    private const double StandardAtmosphereBar = 1.01325;

    /// <summary>How many times more a gas stores than a liquid; null when one of both could not be computed.</summary>
    public double? GasOverLiquid =>
        WithTheOther is { Joules: > 0 } other
            ? IsGas
                ? Energy.Joules / other.Joules
                : other.Joules / Energy.Joules
            : null;

    /// <summary>Computes the hazard of the highest stage that every vessel goes through; null when the design has no stage with pressure.</summary>
    /// <param name="content">Design.</param>
    public static TestHazard? Of(DesignContent content)
    {
        ArgumentNullException.ThrowIfNull(content);
        return Of(content, content.Pressures.HighestOrdinary, !content.Pressures.IsLiquid);
    }

    /// <summary>Computes the hazard of a test to a pressure; null without pressure.</summary>
    /// <param name="content">Design.</param>
    /// <param name="highest">Highest gauge pressure.</param>
    /// <param name="isGas">Whether gas is used.</param>
    public static TestHazard? Of(DesignContent content, Pressure highest, bool isGas)
    {
        ArgumentNullException.ThrowIfNull(content);
        if (highest <= Pressure.Zero || content.Pressures.Meop <= Pressure.Zero)
        {
            return null;
        }

        var liquid = Liquid(content, highest);
        var gas = Gas(content, highest);
        return isGas ? OfGas(highest, gas, liquid)
            : liquid is null ? null
            : new(
                highest,
                false,
                liquid.Total,
                TntEquivalent.Of(liquid.Total),
                null,
                gas?.Isentropic,
                [liquid.Working]
            );
    }

    private static TestHazard? OfGas(Pressure highest, GasEnergy? gas, LiquidEnergy? liquid) =>
        gas is not null
        && Engineering
            .TestSafety.StandOff.Compute(gas.Isentropic, StandOffRule.Pcc2Of2022)
            .TryGet(out var distance)
            ? new(
                highest,
                true,
                gas.Isentropic,
                distance.Tnt,
                distance.Least,
                liquid?.Total,
                [gas.Working, distance.Working]
            )
            : null;

    private static GasEnergy? Gas(DesignContent content, Pressure highest)
    {
        var atmosphere = Pressure.FromBar(StandardAtmosphereBar);
        return GasEnergy
            .Compute(new GasCharge(highest + atmosphere, atmosphere, content.Volume))
            .TryGet(out var gas)
            ? gas
            : null;
    }

    private static LiquidEnergy? Liquid(DesignContent content, Pressure highest)
    {
        var stage = new PressureStage(
            PressureStageKind.Proof,
            (decimal)(highest / content.Pressures.Meop),
            0
        );
        var growth = StagePrediction.Of(content, stage).Expansion?.Expansion ?? Volume.Zero;
        return LiquidEnergy
            .Compute(highest, content.Volume, WaterCompressibilityPerPascal, growth)
            .TryGet(out var liquid)
            ? liquid
            : null;
    }
}

/// <summary>That a named person read what a test stores in energy and keeps people away, before anything was pressurised (F14).</summary>
/// <param name="PersonId">Who.</param>
/// <param name="PrintedName">Printed name.</param>
/// <param name="At">UTC instant.</param>
/// <param name="IsGas">Whether the test is done with gas.</param>
/// <param name="Highest">Highest gauge pressure, as it stood on the screen.</param>
/// <param name="Energy">Stored energy, as it stood on the screen.</param>
/// <param name="Tnt">Its TNT equivalent.</param>
/// <param name="StandOff">Least distance for a test with gas; null for a liquid.</param>
public sealed record HazardAcknowledgement(
    Guid PersonId,
    string PrintedName,
    DateTimeOffset At,
    bool IsGas,
    Pressure Highest,
    Energy Energy,
    Mass Tnt,
    Length? StandOff
)
{
    /// <summary>What the signature under an acknowledgement means.</summary>
    public const string Meaning =
        "I have read the cautions with the stored energy before anything was pressurised, and the stand-off is kept.";

    internal static HazardAcknowledgement Of(TestHazard hazard, Actor actor, DateTimeOffset at) =>
        new(
            actor.PersonId,
            actor.PrintedName,
            at,
            hazard.IsGas,
            hazard.Highest,
            hazard.Energy,
            hazard.Tnt,
            hazard.StandOff
        );
}
