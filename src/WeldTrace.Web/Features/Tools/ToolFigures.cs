using WeldTrace.Documents.Drawings;
using WeldTrace.Documents.Tools;
using WeldTrace.Domain.Tooling;
using WeldTrace.Engineering;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.ToolLife;

namespace WeldTrace.Web.Features.Tools;

/// <summary>What a tool could weld next, with what is left of it and the chance that it survives.</summary>
/// <param name="What">A pass, or all passes of one vessel.</param>
/// <param name="IsVessel">Whether it is a whole vessel.</param>
/// <param name="Usage">Life used, left, and how often this still fits.</param>
/// <param name="Survival">Probability of surviving it; null without a fitted life.</param>
/// <param name="SurvivalBound">One-sided 95 % lower bound of that probability.</param>
public sealed record NextWeld(
    string What,
    bool IsVessel,
    ToolUsage Usage,
    double? Survival,
    double? SurvivalBound
);

/// <summary>Everything that is computed about the life of a tool.</summary>
public sealed class ToolFigures
{
    public const double Confidence = 0.95;

    private const double AssumedShape = 2;
    private readonly ToolView _view;

    public ToolFigures(ToolView view, RetirementReason? mode = null)
    {
        ArgumentNullException.ThrowIfNull(view);
        _view = view;
        Mode = mode ?? CommonerMode(view.Family);
        Records =
        [
            .. view
                .Family.Where(l => l.Used > Length.Zero)
                .Select(l => new LifeRecord(l.Used, l.Ended == Mode)),
        ];
        Fit = ToolLifeFit.Fit(Records);
        AssumedBound = AssumedShapeLife.LowerScale(Records, AssumedShape, Confidence);
        Trend = TrendOf(view);
        Next = [.. Passes(), .. Vessels()];
    }

    /// <summary>The failure that is studied; every other end counts as censored.</summary>
    public RetirementReason Mode { get; }

    public IReadOnlyList<LifeRecord> Records { get; }

    /// <summary>Fitted life of the design's tools; refused while too few have failed.</summary>
    public Computed<ToolLifeFit> Fit { get; }

    /// <summary>Lower bound of the scale if the shape were 2, for few or no failures.</summary>
    public Computed<Length> AssumedBound { get; }

    /// <summary>Trend of the pin's wear; null without wear limits, refused with fewer than three measurements.</summary>
    public Computed<WearTrend>? Trend { get; }

    public IReadOnlyList<NextWeld> Next { get; }

    /// <summary>How the chance of surviving a weld is worked out; null without a fitted life.</summary>
    public Working? SurvivalWorking(NextWeld next)
    {
        ArgumentNullException.ThrowIfNull(next);
        return Fit.IsRefused
            ? null
            : Fit.Value.Survival.ShowConditional(_view.Tool.Used, next.Usage.NextPass, Confidence);
    }

    /// <summary>Inspections of the pin that is fitted at which it was measured, oldest first.</summary>
    public IReadOnlyList<WearReadingLine> Readings => ReadingsOf(_view.Tool);

    /// <summary>Measured pin length against the length welded; null before the first measurement, or without limits.</summary>
    public XyPlot? WearDrawn(UnitSystem units) =>
        Readings.Count > 0 && _view.Design.Upkeep is { } upkeep
            ? WearPlot.Of(
                Readings,
                _view.Design.Geometry.PinLength,
                Length.FromMillimetres(upkeep.LeastPinLength.InUnit()),
                _view.Tool.LifeLimit,
                Trend?.IsRefused is false ? Trend.Value : null,
                units
            )
            : null;

    /// <summary>Weibull plot of the design's tools; null while none has welded.</summary>
    public XyPlot? FailuresDrawn(UnitSystem units) =>
        Records.Count > 0
            ? WeibullPlot.Of(Records, Fit.IsRefused ? null : Fit.Value, _view.Tool.Used, units)
            : null;

    private static RetirementReason CommonerMode(IReadOnlyList<Domain.Tooling.ToolLife> family) =>
        family.Count(l => l.Ended == RetirementReason.Breakage)
        > family.Count(l => l.Ended == RetirementReason.Wear)
            ? RetirementReason.Breakage
            : RetirementReason.Wear;

    private static Computed<WearTrend>? TrendOf(ToolView view) =>
        view.Design.Upkeep is not { } upkeep
            ? null
            : WearTrend.Fit(
                [
                    .. ReadingsOf(view.Tool)
                        .Select(r => new WearReading(
                            r.AtUse,
                            view.Design.Geometry.PinLength - r.PinLength
                        )),
                ],
                view.Design.Geometry.PinLength
                    - Length.FromMillimetres(upkeep.LeastPinLength.InUnit())
            );

    private static List<WearReadingLine> ReadingsOf(Tool tool) =>
        [
            .. (tool.Inspections ?? [])
                .Where(i => i.Measured is not null && i.PinMark == tool.Pin?.Mark)
                .Select(i => new WearReadingLine(
                    i.AtUse,
                    Length.FromMillimetres(i.Measured!.PinLength.InUnit()),
                    i.IsGood
                )),
        ];

    private IEnumerable<NextWeld> Passes() =>
        _view
            .Passes.GroupBy(p => (p.Design, p.Path))
            .Select(g =>
                Weld(
                    $"{g.Key.Design}: {string.Join(", ", g.Select(p => FormattableString.Invariant($"{p.JointCode} pass {p.Number}")))}",
                    isVessel: false,
                    g.Key.Path
                )
            )
            .OfType<NextWeld>();

    private IEnumerable<NextWeld> Vessels() =>
        _view
            .Passes.GroupBy(p => p.Design)
            .Select(g =>
                Weld(
                    $"{g.Key}: the whole vessel",
                    isVessel: true,
                    Length.FromMetres(g.Sum(p => p.Path.Metres))
                )
            )
            .OfType<NextWeld>();

    private NextWeld? Weld(string what, bool isVessel, Length path)
    {
        var tool = _view.Tool;
        var usage = ToolUsage.Compute([tool.LifeLimit - tool.Remaining], tool.LifeLimit, path);
        if (usage.IsRefused)
        {
            return null;
        }

        var survival = Fit.IsRefused ? null : Fit.Value.Survival;
        return new NextWeld(
            what,
            isVessel,
            usage.Value,
            survival?.Conditional(tool.Used, path),
            survival?.ConditionalLowerBound(tool.Used, path, Confidence)
        );
    }
}
