namespace WeldTrace.Engineering.Materials;

/// <summary>A published figure, for plausibility and explanation only; no calculation depends on it.</summary>
/// <param name="Subject">What it is, in words.</param>
/// <param name="Low">Value, or lower end of a range, in <paramref name="Unit"/>.</param>
/// <param name="High">Value, or upper end of a range.</param>
/// <param name="Unit">Unit symbol; empty for a plain number.</param>
/// <param name="Evidence">Whether it was read.</param>
/// <param name="Source">Where.</param>
public sealed record PublishedFigure(
    string Subject,
    double Low,
    double High,
    string Unit,
    Evidence Evidence,
    string Source
);
