using System.Globalization;
using WeldTrace.Documents;
using WeldTrace.Documents.Drawings;
using WeldTrace.Documents.Traveler;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Web.Components.Figures;
using WeldTrace.Web.Components.Marks;
using WeldTrace.Web.Components.Runs;
using WeldTrace.Web.LogJudging;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Vessels.Traveler;

internal static class RunMapping
{
    public static WeldRunSheet Map(TravelerSource source, WeldRun run)
    {
        var procedure = source.Procedures.GetValueOrDefault(run.ProcedureRevisionId);
        var windows = procedure?.Content.Windows ?? [];
        return new WeldRunSheet
        {
            Reference = run.Id.ToString("D")[^12..],
            Joint = run.JointCode,
            Pass =
                run.PassNumber.ToString(CultureInfo.InvariantCulture)
                + (run.Repair is { } repair ? $", repair of {repair.Finding.Label}" : ""),
            State = PrintedMarks.Of(DomainMarks.Of(run.State), WeldRun.StateWord(run.State)),
            Operator = run.OperatorName,
            Machine = run.MachineName,
            Tool = run.ToolMark,
            ProcedureRevision = run.ProcedureLabel,
            StartedAt = run.StartedAt,
            EndedAt = run.EndedAt,
            Travelled = run.Travelled,
            Particulars = Particulars(run),
            Checks =
            [
                .. (run.Checks ?? []).Select(c => new CheckLine(
                    c.Title,
                    c.Text,
                    c.RuleId is { } rule ? $"records, {rule}" : run.OperatorName
                )),
            ],
            Phases =
            [
                .. (run.Log?.Phases ?? []).Select(p => new PhaseLine(
                    p.Phase,
                    Seconds(p.StartSeconds),
                    Seconds(p.EndSeconds)
                )),
            ],
            PhaseFigures = [.. PhaseFigures(run.Log, source.Site.Units)],
            PhaseNotes = [.. PhaseNotes(run.Log, procedure?.Content)],
            Windows = [.. windows.Select(w => Window(w, run.Log))],
            Excursions = [.. Excursions(source, run, windows)],
            Chart = source.Charts.GetValueOrDefault(run.Id),
            Seam = run.Log is null ? null : Seam(source, run),
        };
    }

    private static IReadOnlyList<LabelledValue> Particulars(WeldRun run) =>
        [
            new(
                "Repairs",
                run.Repair is { } repair
                    ? FormattableString.Invariant(
                        $"{repair.Finding.Label}, attempt {repair.Attempt} at the place, from {repair.Start.Degrees:0.0}° along the travel from the start of the pass, {run.PlannedPath.Millimetres:0.#} mm planned"
                    )
                    : null
            ),
            new("Process log", run.Log?.FileName),
            new("SHA-256 of the original", run.Log?.OriginalSha256),
            new("Samples", run.Log?.Rows.ToString(CultureInfo.InvariantCulture)),
            new(
                "Not judged (no such column)",
                run.Log is { NotJudged.Count: > 0 } log
                    ? string.Join(", ", log.NotJudged.Select(ParameterNames.Of))
                    : null
            ),
            new(
                "Judged after a filter",
                run.Log?.Filters is { Count: > 0 } filters
                    ? string.Join(", ", filters.Select(f => $"{f.Parameter}: {f.Filter.Text}"))
                    : null
            ),
            new("Remark", run.EndNote),
        ];

    private static IEnumerable<PhaseFigureLine> PhaseFigures(LogSummary? log, UnitSystem units) =>
        (log?.PhaseFigures ?? [])
            .SelectMany(phase => PhaseText.Lines(phase, units))
            .Select(l => new PhaseFigureLine(
                l.Phase,
                ParameterNames.Of(l.Parameter),
                l.Unit,
                [l.Mean, l.Deviation, l.P1, l.Median, l.P99, l.Drift, l.Change]
            ));

    private static IEnumerable<string> PhaseNotes(LogSummary? log, ProcedureContent? procedure)
    {
        if (log?.PhaseFigures is not { Count: > 0 } phases)
        {
            yield break;
        }

        yield return string.Join("; ", phases.Select(PhaseText.Sentence)) + ".";
        yield return PhaseText.Legend;
        if (
            procedure is not null
            && LigamentOfRun.Margin(log, procedure) is { IsRefused: false } margin
        )
        {
            yield return FormattableString.Invariant(
                $"Margin of the plunge depth {margin.Value.Margin.Millimetres:0.###} mm; {margin.Working.Formula}, {margin.Working.Source}"
            );
        }
    }

    private static WindowLine Window(ParameterWindow window, LogSummary? log)
    {
        var seen = log?.Parameters.FirstOrDefault(p => p.Parameter == window.Parameter);
        var hasExcursion = log?.HardExcursions.Any(e => e.Parameter == window.Parameter) == true;
        return new WindowLine(ParameterNames.Of(window.Parameter), window.Unit)
        {
            SetPoint = window.SetPoint.ToString(CultureInfo.InvariantCulture),
            Lower = window.Lower.ToString(CultureInfo.InvariantCulture),
            Upper = window.Upper.ToString(CultureInfo.InvariantCulture),
            ObservedMinimum = Observed(window, seen?.MinimumSi),
            ObservedMean = Observed(window, seen?.MeanSi),
            ObservedMaximum = Observed(window, seen?.MaximumSi),
            Verdict =
                seen is null ? null
                : hasExcursion ? PrintedMarks.Of(Mark.Failed, "excursion")
                : PrintedMarks.Of(Mark.Passed, "inside"),
        };
    }

    private static string? Observed(ParameterWindow window, double? si) =>
        si is { } value
            ? SensibleDigits.Show(ParameterUnits.FromSi(window.Parameter, value, window.Unit))
            : null;

    private static IEnumerable<ExcursionLine> Excursions(
        TravelerSource source,
        WeldRun run,
        IReadOnlyList<ParameterWindow> windows
    )
    {
        var findings = source
            .History.Findings.Where(f =>
                f.EvidenceId == run.Id && f.Origin == FindingOrigin.Excursion
            )
            .OrderBy(f => f.Number)
            .ToList();
        var number = 0;
        foreach (var excursion in run.Log?.Excursions ?? [])
        {
            var window = windows.FirstOrDefault(w => w.Parameter == excursion.Parameter);
            // Those that overlap share one finding; a warning has none.
            var finding = excursion.IsWarning is true
                ? null
                : findings.FirstOrDefault(f =>
                    f.Place is { Start: { } from, End: { } to }
                    && excursion.StartAngle >= from
                    && excursion.EndAngle <= to
                );
            number++;
            yield return new ExcursionLine(
                number.ToString(CultureInfo.InvariantCulture),
                ParameterNames.Of(excursion.Parameter)
                    + (excursion.Phase is { } phase ? $", {phase}" : "")
                    + (excursion.IsWarning is true ? ", warning" : ""),
                window?.Unit ?? ""
            )
            {
                Extreme = window is null ? null : Observed(window, excursion.ExtremeSi),
                Limit = window?.LimitOf(excursion)?.ToString(CultureInfo.InvariantCulture),
                From = Along(run, excursion.StartAngle),
                To = Along(run, excursion.EndAngle),
                Duration = Seconds(excursion.EndSeconds - excursion.StartSeconds),
                Finding = finding?.Label,
            };
        }
    }

    private static SeamPlan Seam(TravelerSource source, WeldRun run)
    {
        var history = source.History;
        var pass = history.Design.Content.Joint(run.JointCode)!.Pass(run.PassNumber)!;
        return RunSeams.Plan(
            run,
            pass,
            null,
            new IndicationsOnSeam(run, pass).Of(
                history.Sections,
                history.SignOffs,
                history.LeakTests,
                history.Findings
            )
        );
    }

    private static Length Along(WeldRun run, Angle angle) => run.TrackRadius * angle.Radians;

    private static TimeSpan Seconds(double value) => TimeSpan.FromSeconds(value);
}
