using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.PressureTesting;

/// <summary>One stage of a pressure test.</summary>
/// <param name="Name">Name in words, for instance <c>hold at operating pressure</c>.</param>
/// <param name="Target">Pressure to go to, gauge, zero or more.</param>
/// <param name="RatePerMinute">Largest change of pressure in one minute, above zero.</param>
/// <param name="Hold">Time to hold it, zero or more.</param>
public sealed record PressureStage(
    string Name,
    Pressure Target,
    Pressure RatePerMinute,
    TimeSpan Hold
);

/// <summary>A stage with its times since the start of the test.</summary>
/// <param name="Stage">The stage.</param>
/// <param name="From">Pressure before it.</param>
/// <param name="Begins">When the change begins.</param>
/// <param name="Reached">When the target is reached at the earliest.</param>
/// <param name="Ends">When the hold ends at the earliest.</param>
public sealed record ScheduledStage(
    PressureStage Stage,
    Pressure From,
    TimeSpan Begins,
    TimeSpan Reached,
    TimeSpan Ends
);

/// <summary>
/// Times of a staged pressure test from zero: each change takes <c>|p2 − p1|/rate</c>, then the hold. The planned times are the shortest
/// allowed ones. No source needed.
/// </summary>
public sealed record StagePlan : IWorked
{
    private static readonly TimeSpan Longest = TimeSpan.FromDays(30);

    private StagePlan(IReadOnlyList<ScheduledStage> stages)
    {
        Stages = stages;
        Working = Show();
    }

    /// <summary>The stages in order with their times.</summary>
    public IReadOnlyList<ScheduledStage> Stages { get; }

    /// <summary>Highest pressure of the plan.</summary>
    public Pressure Highest => Stages.Max(stage => stage.Stage.Target);

    /// <summary>Shortest time of the whole plan.</summary>
    public TimeSpan Duration => Stages[^1].Ends;

    /// <summary>Whether the plan ends without pressure.</summary>
    public bool ReturnsToZero => Stages[^1].Stage.Target == Pressure.Zero;

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Schedules the stages.</summary>
    /// <param name="stages">Stages in order, one at least.</param>
    public static Computed<StagePlan> Compute(IReadOnlyList<PressureStage> stages)
    {
        ArgumentNullException.ThrowIfNull(stages);
        var check = new InputCheck().Require(
            stages.Count > 0,
            RefusalReason.TooFewData,
            "stages",
            "There is none.",
            "Add a stage."
        );
        foreach (var stage in stages)
        {
            check
                .NotNegative($"target of '{stage.Name}'", stage.Target.Bar, "bar")
                .Positive($"rate of '{stage.Name}'", stage.RatePerMinute.Bar, "bar/min")
                .NotNegative($"hold of '{stage.Name}'", stage.Hold.TotalMinutes, "min");
        }

        return check.IsClean ? Schedule(stages, check) : check.Refused<StagePlan>();
    }

    private static Computed<StagePlan> Schedule(
        IReadOnlyList<PressureStage> stages,
        InputCheck check
    )
    {
        var scheduled = new List<ScheduledStage>(stages.Count);
        var (pressure, minutes) = (Pressure.Zero, 0.0);
        foreach (var stage in stages)
        {
            var reached =
                minutes
                + (Math.Abs((stage.Target - pressure).Pascals) / stage.RatePerMinute.Pascals);
            var ends = reached + stage.Hold.TotalMinutes;
            if (ends > Longest.TotalMinutes)
            {
                return check
                    .Require(
                        false,
                        RefusalReason.OutOfRange,
                        $"rate of '{stage.Name}'",
                        "The plan would last longer than 30 days.",
                        "Check the units of rate and hold."
                    )
                    .Refused<StagePlan>();
            }

            scheduled.Add(
                new(
                    stage,
                    pressure,
                    TimeSpan.FromMinutes(minutes),
                    TimeSpan.FromMinutes(reached),
                    TimeSpan.FromMinutes(ends)
                )
            );
            (pressure, minutes) = (stage.Target, ends);
        }

        return Computed.Of(new StagePlan(scheduled));
    }

    private Working Show()
    {
        var working = Working.Of("Staged pressure test", "t = |p2 − p1|/rate + hold");
        foreach (var stage in Stages)
        {
            working
                .Input("p", $"{stage.Stage.Name}, target", stage.Stage.Target.Bar, "bar")
                .Input(
                    "",
                    $"{stage.Stage.Name}, rate per minute",
                    stage.Stage.RatePerMinute.Bar,
                    "bar"
                )
                .Input("", $"{stage.Stage.Name}, hold", stage.Stage.Hold.TotalMinutes, "min")
                .Step("", $"{stage.Stage.Name}, ends", stage.Ends.TotalMinutes, "min");
        }

        return working
            .Result("", "shortest duration", Duration.TotalMinutes, "min")
            .Result("", "highest pressure", Highest.Bar, "bar")
            .Validity(
                Validity.When(
                    ReturnsToZero,
                    "The plan returns to zero.",
                    "pressure is left at its end."
                )
            )
            .Build();
    }
}
