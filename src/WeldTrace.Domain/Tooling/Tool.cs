using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Tooling;

/// <summary>State of a tool.</summary>
public enum ToolState
{
    /// <summary>Marked and stored, not yet welding.</summary>
    InStore,

    /// <summary>May weld.</summary>
    InService,

    /// <summary>Taken aside until someone clears it.</summary>
    Held,

    /// <summary>Never welds again.</summary>
    Retired,
}

/// <summary>Why a tool was retired.</summary>
public enum RetirementReason
{
    /// <summary>Its life in metres was used up.</summary>
    Limit,

    /// <summary>Worn.</summary>
    Wear,

    /// <summary>Broken.</summary>
    Breakage,

    /// <summary>Anything else, said in words.</summary>
    Other,
}

/// <summary>Where a charged length comes from.</summary>
public enum ChargeBasis
{
    /// <summary>Travelled path measured from the process log.</summary>
    ProcessLog,

    /// <summary>The whole planned path, charged until the log is in.</summary>
    PlannedPath,

    /// <summary>Stated by the operator after an interruption, charged until the log is in.</summary>
    Stated,
}

/// <summary>Length of weld charged to a tool by one run.</summary>
/// <param name="RunId">Weld run.</param>
/// <param name="VesselSerial">Vessel welded.</param>
/// <param name="Length">Length charged; zero or more.</param>
/// <param name="Basis">Where the length comes from.</param>
/// <param name="At">UTC instant of the charge.</param>
public sealed record ToolUse(
    Guid RunId,
    string VesselSerial,
    Length Length,
    ChargeBasis Basis,
    DateTimeOffset At
);

/// <summary>One tool with its permanent mark.</summary>
public sealed class Tool : Record
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

    /// <summary>Everything charged to it, one line per run.</summary>
    public IReadOnlyList<ToolUse> Uses { get; private set; } = [];

    /// <summary>Sum of the charged lengths.</summary>
    public Length Used => Length.FromMetres(Uses.Sum(u => u.Length.Metres));

    /// <summary>What is left of the life; negative when it was overrun.</summary>
    public Length Remaining => LifeLimit - Used;

    /// <summary>Enters a tool with its mark.</summary>
    public static Outcome<Tool> Enter(
        string mark,
        ToolDesign design,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(design);
        var checks = new Checks()
            .Role(actor, Role.Engineer, Role.QualityManager)
            .Text(mark, LongestMark, "Give the mark that is on the tool", nameof(Mark));
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
                $"{Mark} has used up its life of {LifeLimit.Metres:0.0} m; retire it."
            );
        return Do(
            checks,
            () => State = ToolState.InService,
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
        return Do(checks, () => State = ToolState.Held, actor, at, "tool held", reason);
    }

    /// <summary>Takes a tool out of use for good.</summary>
    public Outcome Retire(RetirementReason why, string reason, Actor actor, DateTimeOffset at)
    {
        var checks = new Checks()
            .Role(actor, Role.Engineer, Role.Operator, Role.QualityManager)
            .That(State != ToolState.Retired, "state", $"{Mark} is already retired.")
            .Text(reason, LongestReason, "Say what was seen on the tool", "Reason");
        return Do(
            checks,
            () => (State, Retirement) = (ToolState.Retired, why),
            actor,
            at,
            "tool retired",
            reason
        );
    }

    /// <summary>Charges the length of a run; a later, better figure for the same run takes the place of the first.</summary>
    /// <param name="use">What to charge; its length is zero or more.</param>
    /// <param name="actor">Who welded or brought the log.</param>
    public void Charge(ToolUse use, Actor actor)
    {
        ArgumentNullException.ThrowIfNull(use);
        ArgumentOutOfRangeException.ThrowIfNegative(use.Length.Metres);
        Uses = [.. Uses.Where(u => u.RunId != use.RunId), use];
        Note(actor, use.At, FormattableString.Invariant($"{use.Length.Metres:0.000} m charged"));
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
