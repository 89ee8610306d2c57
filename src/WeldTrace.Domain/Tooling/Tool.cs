using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Tooling;

/// <summary>One tool with its permanent mark.</summary>
public sealed partial class Tool : Record
{
    /// <summary>Longest mark.</summary>
    public const int LongestMark = 40;

    private const int LongestReason = 200;

    private Tool(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "tool";

    /// <inheritdoc/>
    public override string Label => Mark;

    /// <summary>Permanent mark on the tool; unique.</summary>
    public string Mark { get; private set; } = "";

    /// <summary>Design it was made to.</summary>
    public Guid DesignId { get; private set; }

    /// <summary>Number and revision of that design, as printed.</summary>
    public string DesignLabel { get; private set; } = "";

    /// <summary>Length of weld after which it is withdrawn.</summary>
    public Length LifeLimit { get; private set; }

    /// <summary>State.</summary>
    public ToolState State { get; private set; }

    /// <summary>Reason of the retirement.</summary>
    public RetirementReason? Retirement { get; private set; }

    /// <summary>How it left use; null while it has not, and in records made before it was kept.</summary>
    public ToolEnd? End { get; private set; }

    /// <summary>Why it is held; null when it isn't, and in records made before it was kept.</summary>
    public string? HeldBecause { get; private set; }

    /// <summary>Everything charged to it, one line per run, in the order in which they were begun to be charged.</summary>
    public IReadOnlyList<ToolUse> Uses { get; private set; } = [];

    /// <summary>Inspections and cleanings as stored, oldest first; null before the first.</summary>
    public IReadOnlyList<ToolInspection>? Inspections { get; private set; }

    /// <summary>Pins and shoulders ever fitted; null for a tool in one piece.</summary>
    public IReadOnlyList<ToolPart>? Parts { get; private set; }

    /// <summary>Length after which a separate shoulder is withdrawn; null when none is stated.</summary>
    public Length? ShoulderLifeLimit { get; private set; }

    /// <summary>Sum of the lengths charged to it, or to the pin that is fitted where it is a part of its own.</summary>
    public Length Used => UsedBy(Uses.Where(u => Pin is null || u.PinMark == Pin.Mark));

    /// <summary>What is left of the life, of the shoulder's too where it has one; negative when it was overrun.</summary>
    public Length Remaining
    {
        get
        {
            var left = LifeLimit - Used;
            return ShoulderRemaining is { } shoulder && shoulder < left ? shoulder : left;
        }
    }

    /// <summary>Enters a tool with its mark.</summary>
    /// <param name="mark">Permanent mark; 1 to 40 characters.</param>
    /// <param name="design">Design it was made to.</param>
    /// <param name="actor">Who enters it.</param>
    /// <param name="at">UTC instant.</param>
    /// <param name="parts">Marks of pin and shoulder; needed where the design makes them separate, and only there.</param>
    public static Outcome<Tool> Enter(
        string mark,
        ToolDesign design,
        Actor actor,
        DateTimeOffset at,
        ToolPartMarks? parts = null
    )
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(actor);
        var checks = new Checks()
            .Role(actor, Role.Engineer, Role.QualityManager)
            .Text(mark, LongestMark, "Give the mark that is on the tool", nameof(Mark));
        CheckParts(checks, design, parts);
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var tool = new Tool(Guid.CreateVersion7(at))
        {
            Mark = mark.Trim(),
            DesignId = design.Id,
            DesignLabel = design.Label,
            LifeLimit = design.Geometry.LifeLimit,
            ShoulderLifeLimit = design.Geometry.ShoulderLifeLimit,
            Parts = parts is null
                ? null
                :
                [
                    new(ToolPartKind.Pin, parts.Pin.Trim(), at, actor.PrintedName),
                    new(ToolPartKind.Shoulder, parts.Shoulder.Trim(), at, actor.PrintedName),
                ],
        };
        tool.Note(actor, at, "tool entered");
        return tool;
    }

    /// <summary>In store or held to in service.</summary>
    public Outcome PutInService(Actor actor, DateTimeOffset at)
    {
        var checks = new Checks()
            .Role(actor, Role.Engineer, Role.Operator, Role.QualityManager)
            .That(
                State is ToolState.InStore or ToolState.Held,
                "state",
                $"{Mark} is {StateWord(State)} and can't be put in service."
            )
            .That(
                Remaining > Length.Zero,
                "F6",
                FormattableString.Invariant(
                    $"{Mark} has used up its life of {LifeLimit.Metres:0.0} m; retire it."
                )
            )
            .That(
                HasFirstUseCheck,
                "F6",
                $"{Mark} has no first-use check; record that it is clean and as drawn.",
                null,
                ToolRules.CleanSource
            )
            .That(
                LatestMeasured?.IsGood is not false,
                "F6",
                $"{Mark} was outside its limits when it was last measured: {LatestMeasured?.Text}"
            );
        return Do(
            checks,
            () => (State, HeldBecause) = (ToolState.InService, null),
            actor,
            at,
            "tool put in service",
            null
        );
    }

    /// <summary>Takes a tool aside until someone clears it.</summary>
    public Outcome Hold(string reason, Actor actor, DateTimeOffset at)
    {
        var checks = new Checks()
            .Role(actor, Role.Engineer, Role.Operator, Role.Inspector, Role.QualityManager)
            .That(
                State == ToolState.InService,
                "state",
                $"{Mark} is {StateWord(State)}; only a tool in service is held."
            )
            .Text(reason, LongestReason, "Give the reason", "Reason");
        return Do(
            checks,
            () => (State, HeldBecause) = (ToolState.Held, reason.Trim()),
            actor,
            at,
            "tool held",
            reason
        );
    }

    /// <summary>Takes a tool out of use for good.</summary>
    public Outcome Retire(RetirementReason why, string reason, Actor actor, DateTimeOffset at)
    {
        var checks = new Checks()
            .Role(actor, Role.Engineer, Role.Operator, Role.QualityManager)
            .That(State != ToolState.Retired, "state", $"{Mark} is already retired.")
            .Text(reason, LongestReason, "Say what was seen on the tool", "Reason");
        ArgumentNullException.ThrowIfNull(actor);
        return Do(
            checks,
            () =>
                (State, Retirement, HeldBecause, End) = (
                    ToolState.Retired,
                    why,
                    null,
                    new(reason.Trim(), actor.PrintedName, at)
                ),
            actor,
            at,
            "tool retired",
            reason
        );
    }

    /// <summary>The word for a state, as shown.</summary>
    public static string StateWord(ToolState state) =>
        state switch
        {
            ToolState.InStore => "in store",
            ToolState.InService => "in service",
            ToolState.Held => "held",
            ToolState.Retired => "retired",
            _ => throw new ArgumentOutOfRangeException(nameof(state), state, "Unknown state."),
        };

    private Outcome Do(
        Checks checks,
        Action change,
        Actor actor,
        DateTimeOffset at,
        string act,
        string? reason
    )
    {
        if (checks.AllHold)
        {
            change();
            Note(actor, at, act, reason?.Trim());
        }

        return checks.ToOutcome();
    }
}
