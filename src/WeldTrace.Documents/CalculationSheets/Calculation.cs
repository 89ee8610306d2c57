using WeldTrace.Documents.Drawings;
using WeldTrace.Engineering;

namespace WeldTrace.Documents.CalculationSheets;

/// <summary>A calculation as it is shown and printed: what was entered, what follows, and how it was worked out.</summary>
public sealed record Calculation
{
    /// <summary>What is calculated, for instance <c>Pass layout</c>.</summary>
    public required string Title { get; init; }

    /// <summary>What was entered, as it was typed, with units.</summary>
    public IReadOnlyList<LabelledValue> Entered { get; init; } = [];

    /// <summary>The figures that were asked for, with units.</summary>
    public IReadOnlyList<LabelledValue> Figures { get; init; } = [];

    /// <summary>What the figures mean, a sentence each.</summary>
    public IReadOnlyList<string> Statements { get; init; } = [];

    public PassPlan? Passes { get; init; }

    public PressureLadderPlot? Ladder { get; init; }

    public CalculationPlot? Plot { get; init; }

    public IReadOnlyList<CalculationTable> Tables { get; init; } = [];

    public IReadOnlyList<Working> Workings { get; init; } = [];

    /// <summary>The usual cautions, a sentence or two each.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];
}

/// <summary>A plot with its title and the key to its marks.</summary>
public sealed record CalculationPlot(string Title, XyPlot Plot, string Key);

/// <summary>A table; the first field of a row names it, the others are figures with their units.</summary>
public sealed record CalculationTable(
    string Title,
    IReadOnlyList<string> Heads,
    IReadOnlyList<IReadOnlyList<string>> Rows
);

/// <summary>Everything a calculation sheet prints.</summary>
/// <param name="Stamp">Site, person and time.</param>
/// <param name="Address">Absolute address that holds what was entered.</param>
/// <param name="Calculation">The calculation.</param>
public sealed record CalculationSheetModel(
    DocumentStamp Stamp,
    string Address,
    Calculation Calculation
);
