using WeldTrace.Documents.Drawings;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Documents.Traveler;

/// <summary>A leak test with its readings.</summary>
public sealed record LeakTestSheet
{
    public required string Reference { get; init; }

    /// <summary>For instance <c>pressure decay, temperature compensated</c>.</summary>
    public required string Method { get; init; }

    public required string Inspector { get; init; }

    public DateTimeOffset? TestedAt { get; init; }

    /// <summary>Conditions, instruments, computed leak rate with uncertainty, limit: each value with its unit.</summary>
    public IReadOnlyList<LabelledValue> Particulars { get; init; } = [];

    public IReadOnlyList<LeakReadingLine> Readings { get; init; } = [];

    public required StateMark Verdict { get; init; }

    /// <summary>One sentence that says how the verdict follows from the readings.</summary>
    public string? Explanation { get; init; }

    public Correction? Superseded { get; init; }
}

/// <summary>One reading of a leak test.</summary>
public sealed record LeakReadingLine(TimeSpan Elapsed, Pressure Pressure, Temperature? Temperature)
{
    public string? Remark { get; init; }
}

/// <summary>A staged pressure test.</summary>
public sealed record PressureTestSheet
{
    public required string Reference { get; init; }

    /// <summary>For instance <c>Proof test, water</c>.</summary>
    public required string Title { get; init; }

    public required string Inspector { get; init; }

    public DateTimeOffset? TestedAt { get; init; }

    /// <summary>Medium, instruments, stored energy, stand-off distance: each value with its unit.</summary>
    public IReadOnlyList<LabelledValue> Particulars { get; init; } = [];

    public IReadOnlyList<PressureStageLine> Stages { get; init; } = [];

    public IReadOnlyList<DimensionLine> Dimensions { get; init; } = [];

    public PressureLadderPlot? Chart { get; init; }

    public required StateMark Verdict { get; init; }

    public string? Explanation { get; init; }

    public Correction? Superseded { get; init; }
}

/// <summary>One stage as planned and as read; gauge pressures.</summary>
public sealed record PressureStageLine(string Name, Pressure Target)
{
    public TimeSpan? Hold { get; init; }

    public Pressure? AtStart { get; init; }

    public Pressure? AtEnd { get; init; }

    public Temperature? Temperature { get; init; }

    public StateMark? Verdict { get; init; }
}

/// <summary>A dimension before and after the test; numbers as text in <paramref name="Unit"/>.</summary>
public sealed record DimensionLine(string Name, string Unit)
{
    public string? Before { get; init; }

    public string? After { get; init; }

    public string? Change { get; init; }

    public string? Limit { get; init; }

    public StateMark? Verdict { get; init; }
}

/// <summary>A section or another examination with measured imperfections and a photograph.</summary>
public sealed record SectionSheet
{
    public required string Reference { get; init; }

    public required string Title { get; init; }

    public required string Inspector { get; init; }

    public DateTimeOffset? ExaminedAt { get; init; }

    public IReadOnlyList<LabelledValue> Particulars { get; init; } = [];

    public IReadOnlyList<MeasurementLine> Measurements { get; init; } = [];

    public IReadOnlyList<Photograph> Photographs { get; init; } = [];

    /// <summary>What was replaced or struck out before it was signed, with the reason.</summary>
    public IReadOnlyList<string> Replaced { get; init; } = [];

    public required StateMark Verdict { get; init; }

    public string? Explanation { get; init; }

    public Correction? Superseded { get; init; }
}

/// <summary>One measured imperfection; numbers as text in <paramref name="Unit"/>.</summary>
public sealed record MeasurementLine(string Name, string Unit)
{
    public string? Measured { get; init; }

    /// <summary>Side of the weld and distance from the face; null when not told.</summary>
    public string? Place { get; init; }

    public string? Limit { get; init; }

    /// <summary>Formula and source of the limit; null when they stand elsewhere.</summary>
    public string? LimitSource { get; init; }

    public StateMark? Verdict { get; init; }
}
