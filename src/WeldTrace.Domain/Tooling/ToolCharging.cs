using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Tooling;

public sealed partial class Tool
{
    /// <summary>Takes over what a tool had welded before it was entered; only before anything is charged to it.</summary>
    /// <param name="used">Length welded; above zero.</param>
    /// <param name="source">Where that is recorded; 1 to 200 characters.</param>
    /// <param name="actor">Who takes it over.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome TakeOver(Length used, string source, Actor actor, DateTimeOffset at)
    {
        var checks = new Checks()
            .Role(actor, Role.Engineer, Role.QualityManager)
            .That(
                Uses.Count == 0 && State == ToolState.InStore,
                "state",
                $"{Mark} has been used here; only a tool just entered takes earlier metres over."
            )
            .That(
                used > Length.Zero,
                "used",
                "Give the metres welded before, above zero.",
                nameof(Used)
            )
            .Text(source, LongestReason, "Say where the earlier metres are recorded", "Source");
        if (checks.AllHold)
        {
            Charge(new ToolUse(Id, "", used, ChargeBasis.EarlierRecords, at), actor);
            Note(actor, at, "earlier metres taken over", source.Trim());
        }

        return checks.ToOutcome();
    }

    /// <summary>
    /// Charges the length of a run; a later, better figure for the same run takes the place of the first. A tool in service whose
    /// life is used up by it is held.
    /// </summary>
    /// <param name="use">What to charge; its length is zero or more.</param>
    /// <param name="actor">Who welded or brought the log.</param>
    public void Charge(ToolUse use, Actor actor)
    {
        ArgumentNullException.ThrowIfNull(use);
        ArgumentOutOfRangeException.ThrowIfNegative(use.Length.Metres);
        var earlier = Uses.FirstOrDefault(u => u.RunId == use.RunId);
        var charged = use with
        {
            PinMark = earlier is null ? Pin?.Mark : earlier.PinMark,
            ShoulderMark = earlier is null ? Shoulder?.Mark : earlier.ShoulderMark,
        };
        Uses = earlier is null
            ? [.. Uses, charged]
            : [.. Uses.Select(u => u.RunId == use.RunId ? charged : u)];
        Note(actor, use.At, FormattableString.Invariant($"{use.Length.Metres:0.000} m charged"));
        if (State == ToolState.InService && Remaining <= Length.Zero)
        {
            HoldAtLimit(actor, use.At);
        }
    }

    private void HoldAtLimit(Actor actor, DateTimeOffset at)
    {
        (State, HeldBecause) = (
            ToolState.Held,
            LifeLimit - Used <= Length.Zero
                ? FormattableString.Invariant(
                    $"Life used up: {Used.Metres:0.000} m of {LifeLimit.Metres:0.0} m."
                )
                : FormattableString.Invariant(
                    $"Life of the shoulder used up: {ShoulderUsed?.Metres:0.000} m of {ShoulderLifeLimit?.Metres:0.0} m."
                )
        );
        Note(actor, at, "tool held at its limit", HeldBecause);
    }

    private static Length UsedBy(IEnumerable<ToolUse> uses) =>
        Length.FromMetres(uses.Sum(u => u.Length.Metres));
}
