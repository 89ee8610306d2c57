using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Statistics;

namespace WeldTrace.Engineering.ToolLife;

/// <summary>One inspection of a tool.</summary>
/// <param name="Used">Metres welded at the inspection, zero or more.</param>
/// <param name="Wear">Measured wear, for instance loss of pin length.</param>
public readonly record struct WearReading(Length Used, Length Wear);

/// <summary>
/// Straight line of least squares through wear against metres, and the length at which it reaches the wear limit. A trend, no
/// guarantee: pins can break long before. Common practice, no source.
/// </summary>
public sealed record WearTrend : IWorked
{
    private WearTrend(IReadOnlyList<WearReading> readings, Length limit)
    {
        var line = LeastSquares.Of(
            [.. readings.Select(r => r.Used.Metres)],
            [.. readings.Select(r => r.Wear.Metres)]
        );
        MicrometresPerMetre = line.Slope * 1e6;
        StandardErrorMicrometresPerMetre = line.StandardError * 1e6;
        WearAtStart = Length.FromMetres(line.Start);
        ReachesLimitAt =
            line.Slope > 0 ? Length.FromMetres((limit.Metres - line.Start) / line.Slope) : null;
        Working = Show(readings.Count, limit);
    }

    /// <summary>Wear per metre in µm/m.</summary>
    public double MicrometresPerMetre { get; }

    /// <summary>Standard error of the wear per metre, in µm/m.</summary>
    public double StandardErrorMicrometresPerMetre { get; }

    /// <summary>Wear that the line shows for a new tool.</summary>
    public Length WearAtStart { get; }

    /// <summary>Metres at which the line reaches the limit; null when the wear does not grow.</summary>
    public Length? ReachesLimitAt { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Fits the line.</summary>
    /// <param name="readings">Inspections, three or more, at two different lengths at least.</param>
    /// <param name="limit">Wear limit, above zero.</param>
    public static Computed<WearTrend> Fit(IReadOnlyList<WearReading> readings, Length limit)
    {
        ArgumentNullException.ThrowIfNull(readings);
        var check = new InputCheck()
            .Positive("wear limit", limit.Micrometres, "µm")
            .NotNegative(
                "smallest length",
                readings.Select(r => r.Used.Metres).DefaultIfEmpty(0).Min(),
                "m"
            )
            .NotNegative(
                "largest length",
                readings.Select(r => r.Used.Metres).DefaultIfEmpty(0).Max(),
                "m"
            )
            .NotNegative(
                "largest wear",
                readings.Select(r => Math.Abs(r.Wear.Metres)).DefaultIfEmpty(0).Max(),
                "m"
            )
            .Require(
                readings.Count >= 3 && readings.Select(r => r.Used).Distinct().Count() >= 2,
                RefusalReason.TooFewData,
                "inspections",
                "Three are needed, at two different lengths at least.",
                "Add inspections."
            );
        return check.Compute(() => new WearTrend(readings, limit));
    }

    private Working Show(int count, Length limit) =>
        Working
            .Of(
                "Wear trend of a tool",
                "least-squares line of wear against metres; length = (limit − start)/slope"
            )
            .Input("n", "inspections", count)
            .Input("limit", "wear limit", limit.Micrometres, "µm")
            .Step("", "wear of a new tool on the line", WearAtStart.Micrometres, "µm")
            .Step("", "standard error of the slope, µm per metre", StandardErrorMicrometresPerMetre)
            .Result("", "slope, µm per metre", MicrometresPerMetre)
            .OptionalResult("length", "length at the limit", ReachesLimitAt?.Metres, "m")
            .From("Common practice, no source; pins can break long before.")
            .Validity(
                Validity.When(
                    ReachesLimitAt is not null,
                    "The wear grows with the length.",
                    "the line never reaches the limit."
                )
            )
            .Build();
}
