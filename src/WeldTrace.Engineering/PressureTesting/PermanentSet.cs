using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.Quantities;
using static WeldTrace.Engineering.Statistics.StandardUncertainty;

namespace WeldTrace.Engineering.PressureTesting;

/// <summary>A dimension measured before pressure and after the return to zero.</summary>
/// <param name="Name">Which dimension, in words.</param>
/// <param name="Before">Before pressure, above zero.</param>
/// <param name="After">After the return to zero, above zero.</param>
/// <param name="StandardUncertainty">Standard uncertainty of one measurement, above zero.</param>
/// <param name="AllowedSet">Largest allowed set, in a unit of length or in % of the dimension before.</param>
public sealed record SetMeasurement(
    string Name,
    Length Before,
    Length After,
    Length StandardUncertainty,
    WrittenLimit AllowedSet
);

/// <summary>
/// Permanent set: what a dimension has changed for good, <c>set = after − before</c>; its magnitude is judged, since a length
/// can shrink when a diameter grows. Difference; no source needed.
/// </summary>
public sealed record PermanentSet : IWorked
{
    private PermanentSet(SetMeasurement dimension)
    {
        Dimension = dimension;
        Set = dimension.After - dimension.Before;
        RelativePercent = 100 * (Set / dimension.Before);
        ExpandedUncertainty = dimension.StandardUncertainty * (CoverageFactor * Math.Sqrt(2));
        Judgement = Comparison.AtMost(InUnitOf(dimension.AllowedSet), dimension.AllowedSet);
        Working = Show();
    }

    /// <summary>What was measured.</summary>
    public SetMeasurement Dimension { get; }

    /// <summary>Change of the dimension; positive for growth.</summary>
    public Length Set { get; }

    /// <summary>Change in per cent of the dimension before.</summary>
    public double RelativePercent { get; }

    /// <summary>Expanded uncertainty of the set, coverage factor 2.</summary>
    public Length ExpandedUncertainty { get; }

    /// <summary>Judgement of the magnitude of the set.</summary>
    public Judgement Judgement { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Evaluates a dimension.</summary>
    public static Computed<PermanentSet> Evaluate(SetMeasurement dimension)
    {
        ArgumentNullException.ThrowIfNull(dimension);
        var kind = Units.UnitCatalogue.Get(dimension.AllowedSet.Unit).Dimension;
        var isPercent = dimension.AllowedSet.Unit == "%";
        var check = new InputCheck()
            .Positive($"{dimension.Name} before", dimension.Before.Millimetres, "mm")
            .Positive($"{dimension.Name} after", dimension.After.Millimetres, "mm")
            .Positive(
                "uncertainty of the dimension",
                dimension.StandardUncertainty.Millimetres,
                "mm"
            )
            .Require(
                isPercent || kind == Units.Dimension.Length,
                RefusalReason.OutOfRange,
                "allowed set",
                $"Its unit, {dimension.AllowedSet.Unit}, is neither a length nor per cent.",
                "Give it in mm, µm, in or %."
            );
        return check.Compute(() => new PermanentSet(dimension));
    }

    private Measured InUnitOf(WrittenLimit limit)
    {
        var (set, uncertainty) = (Math.Abs(Set.Metres), ExpandedUncertainty.Metres);
        var before = Dimension.Before.Metres;
        return limit.Unit == "%"
            ? new(100 * set / before, "%", 100 * uncertainty / before)
            : new(set, "m", uncertainty);
    }

    private Working Show() =>
        Working
            .Of($"Permanent set of {Dimension.Name}", "set = after − before; U = 2·√2·u")
            .Input("", "before", Dimension.Before.Millimetres, "mm")
            .Input("", "after the return to zero", Dimension.After.Millimetres, "mm")
            .Input(
                "u",
                "standard uncertainty of one measurement",
                Dimension.StandardUncertainty.Millimetres,
                "mm"
            )
            .Result("set", "permanent set", Set.Millimetres, "mm")
            .Result("U", "expanded uncertainty, k = 2", ExpandedUncertainty.Millimetres, "mm")
            .Result("", "relative set", RelativePercent, "%")
            .From(
                "Difference of two measurements with one instrument; uncertainty by propagation (GUM)."
            )
            .Build();
}
