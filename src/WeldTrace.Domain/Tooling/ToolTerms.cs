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

    /// <summary>Welded before the tool was entered, taken over from earlier records.</summary>
    EarlierRecords,
}

/// <summary>Length of weld charged to a tool by one run.</summary>
/// <param name="RunId">Weld run; the tool itself for what was taken over from earlier records.</param>
/// <param name="VesselSerial">Vessel welded; empty for what was taken over.</param>
/// <param name="Length">Length charged; zero or more.</param>
/// <param name="Basis">Where the length comes from.</param>
/// <param name="At">UTC instant of the charge.</param>
/// <param name="JointCode">Joint welded; null in records made before it was kept.</param>
/// <param name="PinMark">Pin that did it, where pin and shoulder are separate parts.</param>
/// <param name="ShoulderMark">Shoulder that did it, where they are separate parts.</param>
public sealed record ToolUse(
    Guid RunId,
    string VesselSerial,
    Length Length,
    ChargeBasis Basis,
    DateTimeOffset At,
    string? JointCode = null,
    string? PinMark = null,
    string? ShoulderMark = null
);

/// <summary>Which part of a tool.</summary>
public enum ToolPartKind
{
    /// <summary>Pin (probe).</summary>
    Pin,

    /// <summary>Shoulder.</summary>
    Shoulder,
}

/// <summary>A pin or a shoulder that is, or was, fitted to a tool whose parts are separate.</summary>
/// <param name="Kind">Pin or shoulder.</param>
/// <param name="Mark">Permanent mark on the part.</param>
/// <param name="FittedAt">UTC instant.</param>
/// <param name="FittedByName">Printed name of whoever fitted it.</param>
/// <param name="Ended">Why it was taken off; null while it is fitted.</param>
/// <param name="EndNote">What was seen on it then.</param>
/// <param name="EndedAt">UTC instant at which it was taken off.</param>
public sealed record ToolPart(
    ToolPartKind Kind,
    string Mark,
    DateTimeOffset FittedAt,
    string FittedByName,
    RetirementReason? Ended = null,
    string? EndNote = null,
    DateTimeOffset? EndedAt = null
);

/// <summary>How a tool left use.</summary>
/// <param name="Text">What was seen on it.</param>
/// <param name="ByName">Printed name of whoever retired it.</param>
/// <param name="At">UTC instant.</param>
public sealed record ToolEnd(string Text, string ByName, DateTimeOffset At);

/// <summary>What one tool, or one pin of it, has done: a line of the life statistics.</summary>
/// <param name="Mark">Mark of the tool, or of its pin.</param>
/// <param name="Used">Length welded.</param>
/// <param name="Ended">Why it ended; null while it may still weld.</param>
public sealed record ToolLife(string Mark, Length Used, RetirementReason? Ended);
