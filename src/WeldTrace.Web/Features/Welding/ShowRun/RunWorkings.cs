using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering;
using WeldTrace.Engineering.Signals;
using WeldTrace.Web.Components.Figures;
using WeldTrace.Web.LogJudging;

namespace WeldTrace.Web.Features.Welding.ShowRun;

/// <summary>How the figures that a run keeps of its process log were worked out.</summary>
public sealed class RunWorkings(RunReader runs) : IWorkings
{
    private const string Word = "runs";
    private const string Pitch = "pitch";
    private const string Energy = "line-energy";
    private const string Closure = "closure";
    private const string Dwell = "dwell";
    private const string Margin = "ligament-margin";

    private const string Handbook =
        "NIST/SEMATECH e-Handbook 1.3.5.1, 1.3.5.6, 7.2.6.2 and 4.1.4.1.";

    public string Kind => Word;

    /// <summary>Address of the working of a parameter's figures.</summary>
    public static string Parameter(Guid run, WeldParameter parameter) =>
        Routes.Working(Word, run, parameter.ToString());

    /// <summary>Address of the working of a parameter's figures in one phase.</summary>
    public static string InPhase(Guid run, LoggedPhaseFigures phase, WeldParameter parameter)
    {
        ArgumentNullException.ThrowIfNull(phase);
        return Routes.Working(Word, run, Key(phase, parameter));
    }

    public static string MarginOf(Guid run) => Routes.Working(Word, run, Margin);

    public static string PitchOf(Guid run) => Routes.Working(Word, run, Pitch);

    public static string DwellOf(Guid run) => Routes.Working(Word, run, Dwell);

    public static string EnergyOf(Guid run) => Routes.Working(Word, run, Energy);

    public static string ClosureOf(Guid run) => Routes.Working(Word, run, Closure);

    /// <summary>Address of the working of a channel's low-frequency content.</summary>
    public static string SignatureOf(Guid run, LoggedSignature found) =>
        Routes.Working(Word, run, Key(found));

    /// <summary>The low-frequency content by its stored figures; null when the line of the spindle can't be seen.</summary>
    public static LowBand? LowBandOf(LoggedSignature found)
    {
        ArgumentNullException.ThrowIfNull(found);
        return
            found is { AmplitudeSi: { } amplitude, LowBandSi: { } low }
            && LowBand.Compute(amplitude, low).TryGet(out var band)
            ? band
            : null;
    }

    /// <summary>The dwell before travel as it was judged; null when it was not.</summary>
    public static LoggedParameter? DwellOf(LogSummary log)
    {
        ArgumentNullException.ThrowIfNull(log);
        return log.Parameters.FirstOrDefault(p => p.Parameter == WeldParameter.DwellTime);
    }

    public async Task<RecordWorkings?> FindAsync(Guid id, CancellationToken cancellation) =>
        await runs.FindAsync(id, cancellation) is { } view
            ? new RecordWorkings(
                view.Records.Run.Label,
                Routes.Run(id),
                view.Records.Run.Log is { } log
                    ? [.. Of(log), .. OfPhases(log, view.Records.Revision.Content)]
                    : []
            )
            : null;

    private static IEnumerable<NamedWorking> Of(LogSummary log)
    {
        foreach (var found in log.Parameters.Where(p => p.MedianSi is not null))
        {
            yield return new(found.Parameter.ToString(), Statistics(found, log));
        }

        if (DwellOf(log) is { } dwell)
        {
            yield return new(Dwell, DwellWorking(log, dwell));
        }

        if (log.PitchMetres is { } pitch)
        {
            yield return new(Pitch, PitchWorking(log, pitch));
        }

        if (log.LineEnergyJoulesPerMetre is { } energy)
        {
            yield return new(Energy, EnergyWorking(log, energy));
        }

        if (
            log.Closure is { } path
            && ClosureOfPath.Compute(path.BySpeed, path.ByOther).TryGet(out var closure)
        )
        {
            yield return new(Closure, closure.Working);
        }

        foreach (var found in log.Signatures ?? [])
        {
            if (LowBandOf(found) is { } band)
            {
                yield return new(Key(found), band.Working);
            }
        }
    }

    private static IEnumerable<NamedWorking> OfPhases(LogSummary log, ProcedureContent procedure)
    {
        foreach (var phase in log.PhaseFigures ?? [])
        {
            foreach (var found in phase.Parameters)
            {
                yield return new(Key(phase, found.Parameter), Statistics(found, log, phase.Phase));
            }
        }

        if (LigamentOfRun.Margin(log, procedure) is { IsRefused: false } margin)
        {
            yield return new(Margin, margin.Working);
        }
    }

    private static string Key(LoggedPhaseFigures phase, WeldParameter parameter) =>
        $"{phase.Phase}-{parameter}";

    private static string Key(LoggedSignature found) =>
        "low-band-" + found.Channel.Replace(' ', '-');

    private static Working Statistics(
        LoggedParameter found,
        LogSummary log,
        string phase = "steady traverse"
    )
    {
        var unit = ParameterText.UnitOf(found.Parameter, UnitSystem.Metric);
        double Shown(double si) => unit.FromSi(si);
        // A difference has no offset: of a temperature in °C it is that in K.
        double Difference(double si) => unit.FromSi(si) - unit.FromSi(0);
        double? Optional(double? si, Func<double, double> show) =>
            si is { } value ? show(value) : null;
        return Working
            .Of(
                $"{ParameterNames.Of(found.Parameter)} over the {phase}",
                "m = Σ x/n; s = √(Σ(x − m)²/(n − 1)); b = Σ((t − t_m)·(x − m))/Σ(t − t_m)²; D = b·T; C = m_last − m_first"
            )
            .Input("n", $"samples of the {phase}", found.Samples)
            .Input("rows", "samples of the whole log", log.Rows)
            .Result("m", "mean", Shown(found.MeanSi), unit.Symbol)
            .Result("s", "standard deviation", Difference(found.StandardDeviationSi), unit.Symbol)
            .Result("x_min", "least value", Shown(found.MinimumSi), unit.Symbol)
            .Result("x_max", "greatest value", Shown(found.MaximumSi), unit.Symbol)
            .OptionalResult(
                "x_1",
                "1 % of the samples lie below",
                Optional(found.P1Si, Shown),
                unit.Symbol
            )
            .OptionalResult("x_50", "median", Optional(found.MedianSi, Shown), unit.Symbol)
            .OptionalResult(
                "x_99",
                "99 % of the samples lie below",
                Optional(found.P99Si, Shown),
                unit.Symbol
            )
            .OptionalResult(
                "D",
                "change from start to end by the straight line of least squares",
                Optional(found.DriftSi, Difference),
                unit.Symbol
            )
            .OptionalResult(
                "C",
                "mean of the last samples less that of the first, 256 of each or a tenth of a short phase",
                Optional(found.ChangeSi, Difference),
                unit.Symbol
            )
            .From(Handbook)
            .Build();
    }

    private static Working DwellWorking(LogSummary log, LoggedParameter dwell) =>
        Working
            .Of("Dwell before travel", "t_d = t_2 − t_1")
            .OptionalInput(
                "t_1",
                "first sample at depth, of the log's own time",
                log.Phases.FirstOrDefault(p => p.Phase == LoggedPhase.Dwell)?.StartSeconds,
                "s"
            )
            .OptionalInput(
                "t_2",
                "first sample of the travel",
                log.Phases.FirstOrDefault(p => p.IsTravel)?.StartSeconds,
                "s"
            )
            .Input("k", "stays of the tool in the work", dwell.Samples)
            .Result("t_d", "dwell, the mean of all stays", dwell.MeanSi, "s")
            .From("Definition; no source needed. Known to one interval between samples.")
            .Build();

    private static Working PitchWorking(LogSummary log, double pitch) =>
        Working
            .Of("Weld pitch over the steady traverse", "p = v/n")
            .OptionalInput(
                "v",
                "mean travel speed",
                Mean(log, WeldParameter.TravelSpeed) * 60_000,
                "mm/min"
            )
            .OptionalInput(
                "n",
                "mean spindle speed",
                Mean(log, WeldParameter.SpindleSpeed) * 60,
                "rev/min"
            )
            .Result("p", "travel per turn", pitch * 1000, "mm/rev")
            .From("Definition; no source needed.")
            .Build();

    private static Working EnergyWorking(LogSummary log, double energy) =>
        Working
            .Of("Mechanical energy of the spindle per length", "E = (1/L)·∫ 2·π·n·M dt")
            .OptionalInput(
                "n",
                "mean spindle speed",
                Mean(log, WeldParameter.SpindleSpeed) * 60,
                "rev/min"
            )
            .OptionalInput("M", "mean torque", Mean(log, WeldParameter.Torque), "N·m")
            .OptionalInput(
                "v",
                "mean travel speed",
                Mean(log, WeldParameter.TravelSpeed) * 60_000,
                "mm/min"
            )
            .Result(
                "E",
                "energy per length, summed sample by sample by the trapezoidal rule",
                energy / 1000,
                "J/mm"
            )
            .From("Work of a torque over a turn; definition, no source needed.")
            .Build();

    private static double? Mean(LogSummary log, WeldParameter parameter) =>
        log.Parameters.FirstOrDefault(p => p.Parameter == parameter)?.MeanSi;
}
