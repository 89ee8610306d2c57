namespace WeldTrace.Documents.Drawings;

/// <summary>A plot laid out for screen and paper alike: places are parts of the width, from the left, and of the height, from the foot.</summary>
public sealed record XyPlot
{
    /// <summary>Says in words what the plot shows.</summary>
    public required string Description { get; init; }

    public required PlotAxis Across { get; init; }

    public required PlotAxis Up { get; init; }

    public IReadOnlyList<PlotLine> Lines { get; init; } = [];

    public IReadOnlyList<PlotPoint> Points { get; init; } = [];
}

/// <summary>An axis with its ticks.</summary>
/// <param name="Title">Quantity and unit.</param>
/// <param name="Ticks">Ticks with what is written at them.</param>
public sealed record PlotAxis(string Title, IReadOnlyList<PlotTick> Ticks);

/// <summary>A tick of an axis.</summary>
/// <param name="At">Part of the axis, 0 to 1.</param>
/// <param name="Text">What is written at it.</param>
public sealed record PlotTick(double At, string Text);

/// <summary>A point of a plot.</summary>
/// <param name="Across">Part of the width, 0 to 1.</param>
/// <param name="Up">Part of the height, 0 to 1.</param>
public readonly record struct PlotPlace(double Across, double Up);

/// <summary>A straight line of a plot.</summary>
/// <param name="From">One end.</param>
/// <param name="To">Other end.</param>
/// <param name="IsLimit">Whether it is a limit, drawn dashed, instead of a fitted line.</param>
/// <param name="Name">Written at its upper or right end.</param>
public sealed record PlotLine(PlotPlace From, PlotPlace To, bool IsLimit, string? Name = null);

/// <summary>What a point means.</summary>
public enum PlotPointKind
{
    /// <summary>Filled disc.</summary>
    Event,

    /// <summary>Ring: counted without the event, for instance a tool still in use.</summary>
    Open,

    /// <summary>Cross: outside its limit.</summary>
    Outside,
}

/// <summary>A point of a plot with its meaning.</summary>
public sealed record PlotPoint(PlotPlace Place, PlotPointKind Kind);
