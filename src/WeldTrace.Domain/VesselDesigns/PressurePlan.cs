using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.VesselDesigns;

/// <summary>What happens at a stage of the pressure test.</summary>
public enum PressureStageKind
{
    /// <summary>Hold at the operating pressure.</summary>
    OperatingHold,

    /// <summary>Back to zero, with a check of the dimensions.</summary>
    ReturnToZero,

    /// <summary>Hold at the proof pressure.</summary>
    Proof,

    /// <summary>Short hold at low pressure, to find leaks of vessel and fittings before more is stored.</summary>
    LeakCheck,

    /// <summary>Raised until the vessel bursts; only for a destructive sample.</summary>
    Burst,
}

/// <summary>One stage of the ladder.</summary>
/// <param name="Kind">What happens.</param>
/// <param name="FactorOnMeop">Gauge pressure of the stage as a multiple of the maximum expected operating pressure; 0 for the return to zero.</param>
/// <param name="HoldSeconds">Least time at pressure; 0 or more.</param>
/// <param name="RatePerMinute">Greatest rise of pressure within one minute; null when the design sets none.</param>
public sealed record PressureStage(
    PressureStageKind Kind,
    decimal FactorOnMeop,
    int HoldSeconds,
    Pressure? RatePerMinute = null
)
{
    /// <summary>The stage in words.</summary>
    public string Name =>
        Kind switch
        {
            PressureStageKind.OperatingHold => "Hold at operating pressure",
            PressureStageKind.ReturnToZero => "Return to zero, dimensions",
            PressureStageKind.Proof => "Proof",
            PressureStageKind.LeakCheck => "Leak check",
            PressureStageKind.Burst => "Burst, samples only",
            _ => throw new ArgumentOutOfRangeException(nameof(Kind), Kind, "Unknown stage."),
        };

    internal void Check(Checks checks)
    {
        var needsPressure = Kind != PressureStageKind.ReturnToZero;
        checks
            .That(
                needsPressure ? FactorOnMeop is > 0 and <= 10 : FactorOnMeop == 0,
                "factor",
                $"{Name}: give a factor above 0 and at most 10 (0 for the return to zero).",
                nameof(PressurePlan.Stages)
            )
            .That(
                HoldSeconds is >= 0 and <= 604800,
                "hold",
                $"{Name}: give a hold of 0 s to one week.",
                nameof(PressurePlan.Stages)
            )
            .That(
                RatePerMinute is not { } rate || rate > Pressure.Zero,
                "rate",
                $"{Name}: give a rate above zero, or leave it empty.",
                nameof(PressurePlan.Stages)
            );
    }
}

/// <summary>Pressures, limits and stages that the design asks of a vessel.</summary>
/// <param name="Meop">Maximum expected operating pressure, gauge; above zero.</param>
/// <param name="Medium">Test medium in words, for instance <c>water</c> or <c>nitrogen</c>.</param>
/// <param name="Stages">Ladder in order; at least one.</param>
/// <param name="FactorSource">Standard or specification behind the factors; written by whoever chose them.</param>
/// <param name="TargetTolerance">Permitted deviation from a stage's pressure, as a share of it, for instance 0.02.</param>
/// <param name="AllowedHoldDrop">Greatest permitted pressure drop during a hold, after temperature correction.</param>
/// <param name="AllowedPermanentSet">Greatest permitted growth of the measured dimension after return to zero.</param>
/// <param name="LeakTestPressure">Gauge pressure of the leak tests; above zero.</param>
/// <param name="LeakRateLimit">Greatest permitted leak rate, referred to 20 °C.</param>
/// <param name="LeakHoldSeconds">Least observation time of a leak test; above zero.</param>
public sealed record PressurePlan(
    Pressure Meop,
    string Medium,
    IReadOnlyList<PressureStage> Stages,
    string FactorSource,
    decimal TargetTolerance,
    Pressure AllowedHoldDrop,
    Length AllowedPermanentSet,
    Pressure LeakTestPressure,
    LeakRate LeakRateLimit,
    int LeakHoldSeconds
)
{
    /// <summary>What proof and burst pressure follow from; null in designs drawn before it was asked for.</summary>
    public LadderBasis? Basis { get; init; }

    /// <summary>Stages that every vessel goes through; the burst is for samples alone.</summary>
    public IReadOnlyList<PressureStage> OrdinaryStages =>
        [.. Stages.Where(s => s.Kind != PressureStageKind.Burst)];

    /// <summary>The burst stage of samples; null when the design has none.</summary>
    public PressureStage? BurstStage =>
        Stages.FirstOrDefault(s => s.Kind == PressureStageKind.Burst);

    /// <summary>Gauge pressure of the highest stage that every vessel goes through.</summary>
    public Pressure HighestOrdinary =>
        Meop * (double)OrdinaryStages.Select(s => s.FactorOnMeop).DefaultIfEmpty(0).Max();

    /// <summary>Whether the medium is named as water or oil; anything else counts as a gas, which is the greater hazard.</summary>
    public bool IsLiquid =>
        Medium.Contains("water", StringComparison.OrdinalIgnoreCase)
        || Medium.Contains("oil", StringComparison.OrdinalIgnoreCase);

    /// <summary>Gauge pressure of a stage.</summary>
    public Pressure Target(PressureStage stage)
    {
        ArgumentNullException.ThrowIfNull(stage);
        return Meop * (double)stage.FactorOnMeop;
    }

    internal void Check(Checks checks)
    {
        checks
            .That(
                Meop > Pressure.Zero,
                "meop",
                "Give the maximum expected operating pressure, above zero.",
                nameof(Meop)
            )
            .Text(Medium, 40, "Name the test medium", nameof(Medium))
            .Text(FactorSource, 200, "Say where the test factors come from", nameof(FactorSource))
            .That(
                Stages.Count > 0,
                "stages",
                "The ladder needs at least one stage.",
                nameof(Stages)
            )
            .That(
                TargetTolerance is > 0 and <= 0.2m,
                "tolerance",
                "Give the tolerance on the stage pressures, above 0 and at most 20 %.",
                nameof(TargetTolerance)
            )
            .That(
                AllowedHoldDrop > Pressure.Zero,
                "drop",
                "Give the permitted pressure drop during a hold, above zero.",
                nameof(AllowedHoldDrop)
            )
            .That(
                AllowedPermanentSet > Length.Zero,
                "set",
                "Give the permitted permanent set, above zero.",
                nameof(AllowedPermanentSet)
            )
            .That(
                LeakTestPressure > Pressure.Zero,
                "leak",
                "Give the leak test pressure, above zero.",
                nameof(LeakTestPressure)
            )
            .That(
                LeakRateLimit > LeakRate.Zero,
                "leak",
                "Give the greatest permitted leak rate, above zero.",
                nameof(LeakRateLimit)
            )
            .That(
                LeakHoldSeconds > 0,
                "leak",
                "Give the least observation time of a leak test, above zero seconds.",
                nameof(LeakHoldSeconds)
            );
        CheckStages(checks);
        Basis?.Check(checks, this);
    }

    private void CheckStages(Checks checks)
    {
        foreach (var stage in Stages)
        {
            stage.Check(checks);
        }

        checks
            .That(
                Stages.Count(s => s.Kind == PressureStageKind.Burst) <= 1
                    && Stages.SkipWhile(s => s.Kind != PressureStageKind.Burst).Skip(1).Any()
                        is false,
                "burst",
                "The burst is the last stage, and there is one at most.",
                nameof(Stages)
            )
            .That(
                BurstStage is null || OrdinaryStages.Count > 0,
                "burst",
                "A ladder is not a burst alone; give the stages that every vessel goes through.",
                nameof(Stages)
            )
            .That(
                BurstStage is not { } burst
                    || OrdinaryStages.All(s => s.FactorOnMeop < burst.FactorOnMeop),
                "burst",
                "The burst factor must be above the factor of every other stage.",
                nameof(Stages)
            );
    }
}
