using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Conformity;
using Measured = WeldTrace.Domain.Records.Measured;
using MeasuredValue = WeldTrace.Engineering.Conformity.Measured;

namespace WeldTrace.Domain.Preparation;

/// <summary>What was done to a vessel's joints before welding.</summary>
/// <param name="Cleanings">Cleanings of the vessel's joints.</param>
/// <param name="FitUps">Fit-ups of the vessel's joints.</param>
public sealed record PreparationFacts(
    IReadOnlyList<JointCleaning> Cleanings,
    IReadOnlyList<JointFitUp> FitUps
)
{
    /// <summary>The last cleaning of a joint; null when there is none.</summary>
    public JointCleaning? CleaningOf(string jointCode) =>
        Cleanings.Where(c => c.JointCode == jointCode).MaxBy(c => c.CleanedAt);

    /// <summary>The last fit-up of a joint; null when there is none.</summary>
    public JointFitUp? FitUpOf(string jointCode) =>
        FitUps.Where(f => f.JointCode == jointCode).MaxBy(f => f.MeasuredAt);
}

/// <summary>Floor rule F8: the joint was cleaned in time and fitted up within the procedure's limits.</summary>
public static class PreparationRules
{
    private const string Source = "ISO 25239-5:2020 4.7.1, 4.7.2, 4.12.2; NASA-STD-5006A GWR 61-63";

    /// <summary>Judges the rule; a limit that the procedure leaves open asks for nothing.</summary>
    /// <param name="jointCode">Joint to be welded.</param>
    /// <param name="procedure">Content of the procedure; null when there is none.</param>
    /// <param name="facts">What was recorded.</param>
    /// <param name="now">UTC instant at which the weld would begin.</param>
    public static RuleVerdict ForWelding(
        string jointCode,
        ProcedureContent? procedure,
        PreparationFacts facts,
        DateTimeOffset now
    )
    {
        ArgumentNullException.ThrowIfNull(jointCode);
        ArgumentNullException.ThrowIfNull(facts);
        var details = procedure?.DetailsOrNone ?? ProcedureDetails.None;
        List<string?> against =
        [
            AgainstCleaning(jointCode, details.CleaningLimit, facts.CleaningOf(jointCode), now),
            .. AgainstFitUp(jointCode, details, facts.FitUpOf(jointCode)),
        ];
        var reasons = against.OfType<string>().ToList();
        return new(
            "F8",
            "Cleaned in time, fitted up within limits",
            reasons.Count == 0 ? RuleStanding.Holds : RuleStanding.Forbids,
            reasons.Count == 0 ? Holds(jointCode, details, facts, now) : string.Join(" ", reasons),
            Source
        );
    }

    private static string? AgainstCleaning(
        string jointCode,
        Measured? limit,
        JointCleaning? cleaning,
        DateTimeOffset now
    )
    {
        if (limit is null)
        {
            return null;
        }

        if (cleaning is null)
        {
            return $"{jointCode} has no cleaning on record; clean it and record it, the procedure allows {limit} until the weld.";
        }

        var hours = (now - cleaning.CleanedAt).TotalHours;
        return hours <= limit.InUnit()
            ? null
            : FormattableString.Invariant(
                $"{jointCode} was cleaned {hours:0.0} h ago, the procedure allows {limit}; clean it again and record it."
            );
    }

    private static IEnumerable<string?> AgainstFitUp(
        string jointCode,
        ProcedureDetails details,
        JointFitUp? fitUp
    )
    {
        if (details is { LargestGap: null, LargestMismatch: null })
        {
            yield break;
        }

        if (fitUp is null)
        {
            yield return $"{jointCode} has no fit-up on record; measure gap and mismatch and record them.";
            yield break;
        }

        yield return Beyond("Gap", jointCode, fitUp.Gap, fitUp.Uncertainty, details.LargestGap);
        yield return Beyond(
            "Mismatch",
            jointCode,
            fitUp.Mismatch,
            fitUp.Uncertainty,
            details.LargestMismatch
        );
    }

    // The instrument's error is counted in: a value that straddles the limit is no pass.
    private static string? Beyond(
        string name,
        string jointCode,
        Measured value,
        Measured uncertainty,
        Measured? largest
    )
    {
        if (largest is null)
        {
            return null;
        }

        var error = new MeasuredValue(Math.Abs(uncertainty.InUnit()), uncertainty.Unit).In(
            value.Unit
        );
        var judged = Comparison.AtMost(
            new MeasuredValue(value.InUnit(), value.Unit, error.Value),
            WrittenLimit.Parse(largest.Digits, largest.Unit)
        );
        return judged.Verdict == Verdict.Pass
            ? null
            : $"{name} of {jointCode}: {judged.Sentence} Fit it up again and measure.";
    }

    private static string Holds(
        string jointCode,
        ProcedureDetails details,
        PreparationFacts facts,
        DateTimeOffset now
    )
    {
        List<string> held = [];
        if (details.CleaningLimit is { } limit && facts.CleaningOf(jointCode) is { } cleaning)
        {
            held.Add(
                FormattableString.Invariant(
                    $"{jointCode} was cleaned {(now - cleaning.CleanedAt).TotalHours:0.0} h ago by {cleaning.CleanedByName}, {limit} are allowed."
                )
            );
        }

        if (
            details is not { LargestGap: null, LargestMismatch: null }
            && facts.FitUpOf(jointCode) is { } fitUp
        )
        {
            held.Add(
                $"Gap {fitUp.Gap}, mismatch {fitUp.Mismatch}, measured by {fitUp.MeasuredByName} with {fitUp.InstrumentMark}."
            );
        }

        return held.Count == 0
            ? "The procedure limits neither the time since cleaning nor the fit-up."
            : string.Join(" ", held);
    }
}
