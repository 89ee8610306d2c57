using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;

namespace WeldTrace.Domain.Findings;

/// <summary>What other vessels may have in common with one that has a finding.</summary>
public enum SharedThing
{
    /// <summary>Welded with one of its tools.</summary>
    Tool,

    /// <summary>Welded on one of its machines.</summary>
    Machine,

    /// <summary>Welded to one of its procedure revisions.</summary>
    Procedure,

    /// <summary>Welded by one of its operators.</summary>
    Operator,

    /// <summary>Made of one of its material lots.</summary>
    MaterialLot,

    /// <summary>Tested or fitted up with one of its instruments.</summary>
    Instrument,
}

/// <summary>A search for vessels that may be affected too, and what was held.</summary>
/// <param name="Shared">What was searched for.</param>
/// <param name="From">First day of welding or testing.</param>
/// <param name="Until">Last day.</param>
/// <param name="Listed">Vessels that were found.</param>
/// <param name="Held">Vessels that were put on hold.</param>
/// <param name="Reason">Why these, or why none.</param>
/// <param name="PersonId">Who searched.</param>
/// <param name="PrintedName">Printed name.</param>
/// <param name="At">UTC instant.</param>
public sealed record Containment(
    IReadOnlyList<SharedThing> Shared,
    DateOnly From,
    DateOnly Until,
    int Listed,
    IReadOnlyList<RecordName> Held,
    string Reason,
    Guid PersonId,
    string PrintedName,
    DateTimeOffset At
);

// Which other vessels may be affected.
public sealed partial class Finding
{
    /// <summary>What the signature under a containment means.</summary>
    public const string ContainmentMeaning =
        "I looked for the vessels that may be affected too, and hold those named.";

    /// <summary>Most vessels that one act holds.</summary>
    public const int MostHeld = 500;

    /// <summary>States kind of defect and cause; may be stated again while the finding is not closed.</summary>
    /// <param name="type">Kind of defect.</param>
    /// <param name="text">Cause in words; 1 to 1000 characters.</param>
    /// <param name="actor">Engineer, inspector or quality manager.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome StateCause(DefectType type, string text, Actor actor, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var checks = new Checks()
            .Role(actor, Role.Engineer, Role.Inspector, Role.QualityManager)
            .Text(text, LongestText, "Say what the cause is, or what is known of it", "Text")
            .That(State != FindingState.Closed, "state", $"{Label} is closed and stays as it is.");
        if (checks.AllHold)
        {
            Cause = new(type, text.Trim(), actor.PersonId, actor.PrintedName, at);
            Note(actor, at, $"cause stated: {FindingWords.DefectWord(type)}", Cause.Text);
        }

        return checks.ToOutcome();
    }

    /// <summary>Records a search for vessels that may be affected too, and holds those chosen, each by a finding of its own.</summary>
    /// <param name="search">What was searched for, and what was found.</param>
    /// <param name="toHold">Vessels to hold; may be none.</param>
    /// <param name="actor">Inspector or quality manager.</param>
    /// <param name="at">UTC instant.</param>
    /// <returns>The findings that hold them.</returns>
    public Outcome<IReadOnlyList<Finding>> Contain(
        ContainmentSearch search,
        IReadOnlyList<Vessel> toHold,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(search);
        ArgumentNullException.ThrowIfNull(toHold);
        ArgumentNullException.ThrowIfNull(actor);
        var checks = CheckContainment(search, toHold, actor);
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var held = toHold.Select(v => Hold(v, actor, at)).ToList();
        Containments =
        [
            .. Containments ?? [],
            new(
                search.Shared,
                search.From,
                search.Until,
                search.Listed,
                [.. toHold.Select(RecordName.Of)],
                search.Reason.Trim(),
                actor.PersonId,
                actor.PrintedName,
                at
            ),
        ];
        Note(
            actor,
            at,
            $"containment: {search.Listed} vessels listed, {held.Count} held",
            search.Reason.Trim()
        );
        return held.AsReadOnly();
    }

    private Checks CheckContainment(
        ContainmentSearch search,
        IReadOnlyList<Vessel> toHold,
        Actor actor
    )
    {
        var gone = toHold.Where(v => v.IsFinal).Select(v => v.Serial).Order().ToList();
        return new Checks()
            .Role(actor, Role.Inspector, Role.QualityManager)
            .Text(
                search.Reason,
                LongestText,
                "Say why these vessels are held, or why none is",
                nameof(Containment.Reason)
            )
            .That(State != FindingState.Closed, "state", $"{Label} is closed and stays as it is.")
            .That(
                search.Shared.Count > 0,
                "shared",
                "Choose what the other vessels have in common with this one.",
                nameof(Containment.Shared)
            )
            .That(
                search.From <= search.Until,
                "window",
                "The last day comes before the first; turn them round.",
                nameof(Containment.Until)
            )
            .That(
                toHold.Count <= MostHeld,
                "count",
                $"Hold at most {MostHeld} vessels at once; make the window narrower.",
                "Serials"
            )
            .That(
                gone.Count == 0 && toHold.All(v => v.Id != VesselId),
                "vessel",
                gone.Count == 0
                    ? $"{VesselSerial} is held by this finding already; leave it out."
                    : $"These left the works or are used up: {string.Join(", ", gone)}. They can't be held; tell whoever has them, and leave them out.",
                "Serials"
            );
    }

    private Finding Hold(Vessel vessel, Actor actor, DateTimeOffset at) =>
        Open(
            vessel,
            (vessel.NextStep ?? vessel.Steps[^1]).Sequence,
            FindingOrigin.Containment,
            $"May be affected by {Label} of {VesselSerial}: {Description}",
            this,
            null,
            actor,
            at
        );
}

/// <summary>A search for vessels that may be affected too.</summary>
/// <param name="Shared">What they have in common with the one that has the finding.</param>
/// <param name="From">First day of welding or testing.</param>
/// <param name="Until">Last day.</param>
/// <param name="Listed">How many were found.</param>
/// <param name="Reason">Why those are held that are, or why none is; 1 to 1000 characters.</param>
public sealed record ContainmentSearch(
    IReadOnlyList<SharedThing> Shared,
    DateOnly From,
    DateOnly Until,
    int Listed,
    string Reason
);
