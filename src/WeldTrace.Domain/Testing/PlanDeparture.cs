namespace WeldTrace.Domain.Testing;

/// <summary>How a pressure test left its plan.</summary>
public enum DepartureKind
{
    /// <summary>Above the pressure of the stage, though not above that of the whole ladder.</summary>
    OverTarget,

    /// <summary>Raised faster than the plan allows.</summary>
    RateTooHigh,

    /// <summary>The pressure of a later stage was reached before this one was held.</summary>
    StageSkipped,

    /// <summary>The hold did not pass, and is repeated.</summary>
    HoldRepeated,
}

/// <summary>What somebody decided about a departure.</summary>
/// <param name="GoesOn">Whether the test goes on with the readings as they are; otherwise it ends and fails.</param>
/// <param name="Reason">Why.</param>
/// <param name="PersonId">Who decided.</param>
/// <param name="By">Printed name.</param>
/// <param name="At">UTC instant.</param>
public sealed record DepartureDecision(
    bool GoesOn,
    string Reason,
    Guid PersonId,
    string By,
    DateTimeOffset At
);

/// <summary>A step out of the plan: the test stands until somebody has decided and signed. The readings are kept.</summary>
/// <param name="StageNumber">Stage, from 1.</param>
/// <param name="Kind">How it left the plan.</param>
/// <param name="Sentence">What happened, with readings and limit.</param>
/// <param name="Reading">What was read.</param>
/// <param name="At">UTC instant of the entry.</param>
/// <param name="By">Printed name of whoever entered it.</param>
/// <param name="Decision">What was decided; null until then.</param>
public sealed record PlanDeparture(
    int StageNumber,
    DepartureKind Kind,
    string Sentence,
    StageReading Reading,
    DateTimeOffset At,
    string By,
    DepartureDecision? Decision
)
{
    /// <summary>What a signature under a decision means.</summary>
    public const string DecisionMeaning =
        "I decided, as stated, what follows from the test having left its plan.";

    /// <summary>What a signature under the repeat of a hold means.</summary>
    public const string RepeatMeaning =
        "I decided, for the reason stated, that this hold is repeated; its first result stays in the record.";

    /// <summary>What was decided, in words; null while nothing is.</summary>
    public string? DecisionWord =>
        Decision is null ? null
        : !Decision.GoesOn ? "The test ended and failed"
        : Kind == DepartureKind.HoldRepeated ? "The hold was repeated"
        : "The test went on";

    /// <summary>The words for a kind.</summary>
    public static string Word(DepartureKind kind) =>
        kind switch
        {
            DepartureKind.OverTarget => "above the pressure of the stage",
            DepartureKind.RateTooHigh => "raised too fast",
            DepartureKind.StageSkipped => "stage skipped",
            DepartureKind.HoldRepeated => "hold not passed",
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown kind."),
        };

    internal static IReadOnlyList<(DepartureKind Kind, string Sentence)> Of(
        VesselDesigns.PressureStage stage,
        VesselDesigns.PressureStage? following,
        StageReading reading,
        VesselDesigns.PressurePlan plan
    )
    {
        List<(DepartureKind, string)> found = [];
        var (target, tolerance) = (plan.Target(stage).Bar, (double)plan.TargetTolerance);
        var highest = StageEvaluation.HighestBar(reading);
        if (
            highest is { } bar
            && Exceeds(bar, target * (1 + tolerance))
            && stage.Kind != VesselDesigns.PressureStageKind.Burst
        )
        {
            var isNext =
                following is not null
                && plan.Target(following).Bar > target
                && bar >= plan.Target(following).Bar * (1 - tolerance);
            found.Add(
                (
                    isNext ? DepartureKind.StageSkipped : DepartureKind.OverTarget,
                    FormattableString.Invariant(
                        $"{stage.Name}: {bar:0.##} bar were reached; the stage goes to {target:0.##} bar, {target * (1 + tolerance):0.##} bar at most{(isNext ? ", and the pressure of the next stage comes after it" : "")}."
                    )
                )
            );
        }

        if (
            stage.RatePerMinute is { } rate
            && (reading.FastestRise ?? reading.Burst?.RatePerMinute) is { } rise
            && Exceeds(rise.InUnit(), rate.Bar)
        )
        {
            found.Add(
                (
                    DepartureKind.RateTooHigh,
                    FormattableString.Invariant(
                        $"{stage.Name}: the pressure rose by {rise.InUnit():0.##} bar within a minute; the plan allows {rate.Bar:0.##} bar."
                    )
                )
            );
        }

        return found;
    }

    internal static bool Exceeds(double bar, double limit) =>
        Engineering
            .Conformity.Comparison.AtMost(
                new Engineering.Conformity.Measured(bar, "bar"),
                Engineering.Conformity.WrittenLimit.Exact(limit, "bar")
            )
            .Verdict != Engineering.Conformity.Verdict.Pass;
}
