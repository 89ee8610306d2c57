using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Statistics;
using WeldTrace.Persistence.RunFigures;

namespace WeldTrace.Web.LogJudging;

/// <summary>Charts and capability of one parameter over many runs, in the unit of its window.</summary>
public sealed class RunSignals
{
    private const double Confidence = 0.95;

    /// <summary>Charts need three or more runs.</summary>
    public const int FewestRuns = 3;

    /// <summary>The latest runs that charts are made of.</summary>
    public const int MostRuns = 1000;

    /// <param name="values">Means of the runs in order of time, in the unit of the window; three or more.</param>
    /// <param name="window">Window; null: no capability.</param>
    public RunSignals(IReadOnlyList<double> values, ParameterWindow? window)
    {
        ArgumentNullException.ThrowIfNull(values);
        Values = values;
        Individuals = IndividualsChart.Compute(values).TryGet(out var chart) ? chart : null;
        var sample = Sample.Of(values);
        if (Individuals is not null && sample.StandardDeviation > 0)
        {
            // The spread from run to run, so that a slow drift does not widen the limits.
            var spread = Individuals.MeanRange / ControlConstants.For(2).D2;
            Weighted = spread > 0 ? new WeightedAverageChart(sample.Mean, spread) : null;
            Averages = Weighted?.Averages(values) ?? [];
            Capability =
                window is not null
                && Capability
                    .Compute(
                        new ToleranceRange(
                            (double)window.Lower,
                            (double)window.Upper,
                            (double)window.SetPoint
                        ),
                        sample.Mean,
                        sample.StandardDeviation,
                        values.Count
                    )
                    .TryGet(out var found)
                    ? found
                    : null;
        }
    }

    /// <summary>Charts of runs in order of time; null for fewer than three.</summary>
    /// <param name="figures">Figures of one parameter.</param>
    /// <param name="parameter">That parameter.</param>
    /// <param name="content">Procedure revision whose window it has, if any.</param>
    public static RunSignals? Of(
        IReadOnlyList<RunFigureRow> figures,
        WeldParameter parameter,
        ProcedureContent? content
    )
    {
        ArgumentNullException.ThrowIfNull(figures);
        var unit = UnitOf(parameter, content);
        return figures.Count < FewestRuns
            ? null
            : new RunSignals(
                [.. figures.Select(f => ParameterUnits.FromSi(parameter, f.MeanSi, unit))],
                content?.WindowOf(parameter)
            );
    }

    /// <summary>Unit in which a procedure states a parameter; the first usual one when it states none.</summary>
    public static string UnitOf(WeldParameter parameter, ProcedureContent? content) =>
        content?.WindowOf(parameter)?.Unit ?? ParameterUnits.For(parameter)[0];

    public IReadOnlyList<double> Values { get; }

    /// <summary>Individual values and moving ranges; null for fewer than three.</summary>
    public IndividualsChart? Individuals { get; }

    /// <summary>Exponentially weighted moving average; null when nothing varies.</summary>
    public WeightedAverageChart? Weighted { get; }

    public IReadOnlyList<double> Averages { get; } = [];

    /// <summary>Capability within the window; null when it can't be told.</summary>
    public Capability? Capability { get; }

    public Interval? CpkInterval => Capability?.CpkInterval(Confidence);

    public Interval? CpInterval => Capability?.CpInterval(Confidence);

    /// <summary>What the charts say of one run; empty when nothing.</summary>
    public IReadOnlyList<RunSignal> Of(int run)
    {
        List<RunSignal> signals = [];
        if (Individuals?.Values.IsSignal(Values[run]) == true)
        {
            signals.Add(RunSignal.ValueBeyondLimits);
        }

        if (run > 0 && Individuals?.Ranges.IsSignal(Individuals.MovingRanges[run - 1]) == true)
        {
            signals.Add(RunSignal.JumpFromRunBefore);
        }

        if (Weighted?.LimitsAt(run + 1).IsSignal(Averages[run]) == true)
        {
            signals.Add(RunSignal.AverageBeyondLimits);
        }

        return signals;
    }
}
