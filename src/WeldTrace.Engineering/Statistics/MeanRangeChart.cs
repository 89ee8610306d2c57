namespace WeldTrace.Engineering.Statistics;

/// <summary>
/// Charts of subgroup means and ranges: <c>X ± A2·R</c>, <c>D3·R</c> to <c>D4·R</c>, <c>σ = R/d2</c>. Constants computed, see
/// <see cref="ControlConstants"/>. Fewer than 20 subgroups give trial limits only.
/// </summary>
public sealed record MeanRangeChart : IWorked
{
    private const int Enough = 20;

    private MeanRangeChart(IReadOnlyList<IReadOnlyList<double>> groups)
    {
        var constants = ControlConstants.For(groups[0].Count);
        GroupMeans = [.. groups.Select(group => group.Average())];
        GroupRanges = [.. groups.Select(group => group.Max() - group.Min())];
        var (mean, range) = (GroupMeans.Average(), GroupRanges.Average());
        var width = constants.A2 * range;
        Means = new(mean - width, mean, mean + width);
        Ranges = new(constants.LowerRangeFactor * range, range, constants.UpperRangeFactor * range);
        Sigma = range / constants.D2;
        Working = Working
            .Of("Charts of means and ranges", "X ± A2·R; D3·R to D4·R; σ = R/d2")
            .Input("m", "subgroups", groups.Count)
            .Input("n", "values in each", constants.Size)
            .Step("A2", "constant", constants.A2)
            .Step("d2", "constant", constants.D2)
            .Step("X", "grand mean", mean)
            .Step("R", "mean range", range)
            .Result("", "lower limit of means", Means.Lower)
            .Result("", "upper limit of means", Means.Upper)
            .Result("", "upper limit of ranges", Ranges.Upper)
            .Result("σ", "standard deviation inside subgroups", Sigma)
            .From("Usual 3-sigma limits; checked on published piston-ring data.")
            .Validity(
                Validity.When(
                    groups.Count >= Enough,
                    $"There are at least {Enough} subgroups.",
                    "these are trial limits only."
                )
            )
            .Build();
    }

    /// <summary>Mean of each subgroup.</summary>
    public IReadOnlyList<double> GroupMeans { get; }

    /// <summary>Range of each subgroup.</summary>
    public IReadOnlyList<double> GroupRanges { get; }

    /// <summary>Limits of the means.</summary>
    public ControlLimits Means { get; }

    /// <summary>Limits of the ranges.</summary>
    public ControlLimits Ranges { get; }

    /// <summary>Standard deviation inside subgroups.</summary>
    public double Sigma { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Computes the limits.</summary>
    /// <param name="groups">Subgroups of one size, 2 to 25 values each, two subgroups or more.</param>
    public static Computed<MeanRangeChart> Compute(IReadOnlyList<IReadOnlyList<double>> groups)
    {
        ArgumentNullException.ThrowIfNull(groups);
        var sizes = groups.Select(group => group.Count).Distinct().ToList();
        var check = new InputCheck()
            .Require(
                groups.Count >= 2,
                RefusalReason.TooFewData,
                "subgroups",
                "There are fewer than two.",
                "Add subgroups."
            )
            .Require(
                sizes.Count == 1 && sizes[0] is >= 2 and <= 25,
                RefusalReason.OutOfRange,
                "subgroups",
                "They are not of one size from 2 to 25.",
                "Complete or leave out the short ones."
            )
            .Sensible("values", groups.SelectMany(group => group));
        return check.Compute(() => new MeanRangeChart(groups));
    }
}
