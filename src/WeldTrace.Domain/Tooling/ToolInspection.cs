using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Tooling;

/// <summary>Why a tool was looked at.</summary>
public enum ToolInspectionKind
{
    /// <summary>Before its first use, or before the first use of a new pin: clean, marked, as drawn.</summary>
    FirstUse,

    /// <summary>Cleaned and looked at before it goes on to another joint.</summary>
    Cleaned,

    /// <summary>Measured against the wear limits.</summary>
    Wear,
}

/// <summary>What was measured on a pin, and with which instrument.</summary>
/// <param name="PinLength">Length, in mm.</param>
/// <param name="PinDiameter">Diameter at the root, in mm.</param>
/// <param name="InstrumentId">Instrument.</param>
/// <param name="InstrumentMark">Mark of the instrument.</param>
public sealed record PinMeasurement(
    Measured PinLength,
    Measured PinDiameter,
    Guid InstrumentId,
    string InstrumentMark
);

/// <summary>One inspection or cleaning of a tool.</summary>
/// <param name="Kind">Why it was looked at.</param>
/// <param name="On">Day.</param>
/// <param name="At">UTC instant of the entry.</param>
/// <param name="AtUse">Length welded by then, by the pin where it is separate.</param>
/// <param name="AfterUses">Number of runs charged by then.</param>
/// <param name="ProcedureNumber">Written procedure followed; empty where none is laid down.</param>
/// <param name="IsGood">Whether it may go on welding.</param>
/// <param name="Text">The verdict in words, with what was seen.</param>
/// <param name="ByName">Printed name of whoever inspected it.</param>
/// <param name="Measured">What was measured; null when nothing was.</param>
/// <param name="PinMark">Pin, where it is a separate part.</param>
/// <param name="FileSha256">A picture or paper handed in; null when there was none.</param>
public sealed record ToolInspection(
    ToolInspectionKind Kind,
    DateOnly On,
    DateTimeOffset At,
    Length AtUse,
    int AfterUses,
    string ProcedureNumber,
    bool IsGood,
    string Text,
    string ByName,
    PinMeasurement? Measured = null,
    string? PinMark = null,
    string? FileSha256 = null
)
{
    /// <summary>The words for a kind.</summary>
    public static string Word(ToolInspectionKind kind) =>
        kind switch
        {
            ToolInspectionKind.FirstUse => "first-use check",
            ToolInspectionKind.Cleaned => "cleaned",
            ToolInspectionKind.Wear => "wear inspection",
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown kind."),
        };
}
