using WeldTrace.Documents.Drawings;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Documents.Tools;

/// <summary>Everything a tool card prints. Missing values are null or empty.</summary>
public sealed record ToolCardModel
{
    public required DocumentStamp Stamp { get; init; }

    /// <summary>Absolute address of the tool's page; printed as a QR code and in text.</summary>
    public required string RecordAddress { get; init; }

    public required string Serial { get; init; }

    public required StateMark State { get; init; }

    public required string Design { get; init; }

    /// <summary>Shoulder, pin, material, coating and whatever else the design states, values with units.</summary>
    public IReadOnlyList<LabelledValue> Particulars { get; init; } = [];

    public required ToolLife Life { get; init; }

    /// <summary>Computed figures of life: passes left, wear trend, probability of surviving the next pass.</summary>
    public IReadOnlyList<LabelledValue> LifeFigures { get; init; } = [];

    /// <summary>Measured pin length against the length welded; null before the first measurement.</summary>
    public XyPlot? Wear { get; init; }

    /// <summary>Failed part of the tools of this design; null while none has welded.</summary>
    public XyPlot? Failures { get; init; }

    public IReadOnlyList<ToolUseLine> Uses { get; init; } = [];

    public IReadOnlyList<ToolInspectionLine> Inspections { get; init; } = [];

    public ToolRetirement? Retirement { get; init; }

    public IReadOnlyList<Photograph> Photographs { get; init; } = [];

    public IReadOnlyList<SignatureEntry> Signatures { get; init; } = [];
}

/// <summary>The path a tool has welded against its limit.</summary>
public sealed record ToolLife(Length Used, Length Limit)
{
    /// <summary>Use at which the next inspection is due.</summary>
    public Length? InspectionDueAt { get; init; }
}

/// <summary>The path one run charged to the tool.</summary>
public sealed record ToolUseLine(DateTimeOffset At, string Run, Length Path)
{
    public string? Vessel { get; init; }

    public string? Joint { get; init; }

    public string? Pass { get; init; }

    /// <summary>Sum of all uses up to and with this one.</summary>
    public Length? TotalAfter { get; init; }

    public Correction? Superseded { get; init; }
}

/// <summary>One inspection of the tool.</summary>
public sealed record ToolInspectionLine(DateTimeOffset At, string Inspector, StateMark Verdict)
{
    /// <summary>Use of the tool at the time of the inspection.</summary>
    public Length? AtUse { get; init; }

    /// <summary>What was measured, each value with its unit.</summary>
    public IReadOnlyList<LabelledValue> Measured { get; init; } = [];

    public string? Remark { get; init; }

    public Correction? Superseded { get; init; }
}

/// <summary>Why and by whom the tool was taken out of use.</summary>
public sealed record ToolRetirement(string Reason, string RetiredBy, DateTimeOffset RetiredAt);
