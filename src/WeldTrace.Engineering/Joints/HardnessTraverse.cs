using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Joints;

/// <summary>One indentation of a hardness traverse.</summary>
/// <param name="Position">Distance from the weld centre; the sign tells the side.</param>
/// <param name="Vickers">Hardness HV, above zero.</param>
public readonly record struct HardnessPoint(Length Position, double Vickers);

/// <summary>
/// Minimum of a hardness traverse, its place, its ratio to the parent, and the width of the softened zone between the outermost
/// crossings of 0.9 × parent by linear interpolation. Common practice, no source.
/// </summary>
public sealed record HardnessTraverse : IWorked
{
    private const double SoftenedBelow = 0.9;

    private HardnessTraverse(IReadOnlyList<HardnessPoint> points, double parent)
    {
        var lowest = points.MinBy(point => point.Vickers);
        (Minimum, Place, RatioToParent) = (
            lowest.Vickers,
            lowest.Position,
            lowest.Vickers / parent
        );
        SoftenedWidth = WidthBelow(points, SoftenedBelow * parent);
        Working = Working
            .Of(
                "Hardness traverse",
                "ratio = HV_min/HV_parent; softened where HV < 0.9·HV_parent, linear interpolation"
            )
            .Input("n", "indentations", points.Count)
            .Input("HV_parent", "hardness of the parent", parent, "")
            .Result("HV_min", "smallest hardness", Minimum)
            .Result("x", "its place", Place.Millimetres, "mm")
            .Result("", "ratio to the parent", RatioToParent)
            .Result("", "softened width", SoftenedWidth?.Millimetres ?? 0, "mm")
            .From("Common practice, no source.")
            .Validity(
                Validity.When(
                    SoftenedWidth is not null,
                    "The traverse reaches unsoftened metal on both sides.",
                    "the softened zone is wider than the traverse, or there is none."
                )
            )
            .Build();
    }

    /// <summary>Smallest hardness HV.</summary>
    public double Minimum { get; }

    /// <summary>Where it was found.</summary>
    public Length Place { get; }

    /// <summary>Smallest hardness over that of the parent.</summary>
    public double RatioToParent { get; }

    /// <summary>Width of the softened zone; null when there is none or it reaches an end of the traverse.</summary>
    public Length? SoftenedWidth { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Evaluates a traverse.</summary>
    /// <param name="points">Indentations in order of position, three or more.</param>
    /// <param name="parentVickers">Hardness of the parent HV, above zero.</param>
    public static Computed<HardnessTraverse> Compute(
        IReadOnlyList<HardnessPoint> points,
        double parentVickers
    )
    {
        ArgumentNullException.ThrowIfNull(points);
        var isOrdered = points
            .Zip(points.Skip(1))
            .All(pair => pair.First.Position < pair.Second.Position);
        var check = new InputCheck()
            .Positive("hardness of the parent", parentVickers)
            .Positive(
                "smallest hardness",
                points.Select(point => point.Vickers).DefaultIfEmpty(1).Min()
            )
            .Positive(
                "largest hardness",
                points.Select(point => point.Vickers).DefaultIfEmpty(1).Max()
            )
            .Require(
                points.Count >= 3,
                RefusalReason.TooFewData,
                "indentations",
                "Three or more are needed.",
                "Add indentations."
            )
            .Require(
                isOrdered,
                RefusalReason.OutOfRange,
                "positions",
                "They do not grow from point to point.",
                "Order the indentations by position."
            );
        return check.Compute(() => new HardnessTraverse(points, parentVickers));
    }

    /// <summary>Vickers hardness of an indentation: 0.1891·F/d², F in N, d in mm (ISO 6507-1, from memory).</summary>
    /// <param name="force">Test force.</param>
    /// <param name="meanDiagonal">Mean of both diagonals, above zero.</param>
    public static double VickersOf(Force force, Length meanDiagonal)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(
            meanDiagonal.Metres,
            nameof(meanDiagonal)
        );
        return Finite.Require(0.1891 * force.Newtons / Math.Pow(meanDiagonal.Millimetres, 2));
    }

    private static Length? WidthBelow(IReadOnlyList<HardnessPoint> points, double level)
    {
        var soft = Enumerable.Range(0, points.Count).Where(i => points[i].Vickers < level).ToList();
        return soft.Count == 0 || soft[0] == 0 || soft[^1] == points.Count - 1
            ? null
            : Crossing(points[soft[^1]], points[soft[^1] + 1], level)
                - Crossing(points[soft[0] - 1], points[soft[0]], level);
    }

    private static Length Crossing(HardnessPoint left, HardnessPoint right, double level) =>
        left.Position
        + (
            (right.Position - left.Position)
            * ((level - left.Vickers) / (right.Vickers - left.Vickers))
        );
}
