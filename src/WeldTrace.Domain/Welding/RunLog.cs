using WeldTrace.Domain.Findings;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.Vessels;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Welding;

// The machine's process log, and what it brings to light.
public sealed partial class WeldRun
{
    /// <summary>Whether the run still awaits its process log, and the person may bring it.</summary>
    public Outcome AwaitsLog(Actor actor)
    {
        ArgumentNullException.ThrowIfNull(actor);
        return CheckAwaitsLog(actor).ToOutcome();
    }

    /// <summary>Takes in the judged process log: corrects the charge and opens a finding for each group of excursions beyond a limit; a warning opens none.</summary>
    /// <param name="log">What the log showed.</param>
    /// <param name="windows">Windows it was judged against.</param>
    /// <param name="vessel">Vessel.</param>
    /// <param name="tool">Tool.</param>
    /// <param name="actor">Who brought the log.</param>
    /// <param name="at">UTC instant.</param>
    /// <returns>The findings that follow; may be none.</returns>
    public Outcome<IReadOnlyList<Finding>> TakeLog(
        LogSummary log,
        IReadOnlyList<ParameterWindow> windows,
        Vessel vessel,
        Tool tool,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(vessel);
        ArgumentNullException.ThrowIfNull(tool);
        var checks = CheckAwaitsLog(actor)
            .That(
                log.Travelled > Length.Zero || Travelled is not { } stated || stated <= Length.Zero,
                "no-travel",
                FormattableString.Invariant(
                    $"The log shows no travel in the work, but the run is recorded with {Travelled?.Millimetres:0} mm; check that it is the log of this run and that its columns are mapped rightly."
                )
            );
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        Log = log;
        Travelled = log.Travelled;
        tool.Charge(
            new ToolUse(Id, VesselSerial, log.Travelled, ChargeBasis.ProcessLog, at, JointCode),
            actor
        );
        Note(actor, at, "process log judged");
        List<Finding> findings = [];
        if (!log.ReachedEnd && State == WeldRunState.Ended)
        {
            State = WeldRunState.Interrupted;
            FailStepOf(vessel, actor, at);
            findings.Add(OpenInterruption(vessel, actor, at));
        }

        findings.AddRange(
            ExcursionGroups
                .Of(log.HardExcursions)
                .Select(group => OpenExcursions(group, windows, vessel, actor, at))
        );
        return findings.AsReadOnly();
    }

    private Checks CheckAwaitsLog(Actor actor) =>
        new Checks()
            .Role(actor, Role.Operator, Role.Engineer)
            .That(
                State != WeldRunState.Running,
                "state",
                "End the run first, then bring its process log."
            )
            .That(!IsSealed, "state", $"The run {Label} is signed; its log can't change.")
            .That(
                Log is null,
                "log",
                $"The run {Label} has its process log already ({Log?.FileName})."
            );

    private Finding OpenInterruption(Vessel vessel, Actor actor, DateTimeOffset at)
    {
        var reached = AngleAfter(Travelled!.Value);
        var description = FormattableString.Invariant(
            $"{(Repair is { } repair ? $"Repair of {repair.Finding.Label} on" : "Run of")} {JointCode} pass {PassNumber} stopped after {Travelled.Value.Millimetres:0} mm of {PlannedPath.Millimetres:0} mm. {EndNote}"
        );
        return Finding.Open(
            vessel,
            StepSequence,
            FindingOrigin.InterruptedRun,
            description.Trim(),
            this,
            new SeamPlace(JointCode, PassNumber, reached, AngleAfter(PlannedPath)),
            actor,
            at
        );
    }

    private Angle AngleAfter(Length travelled) =>
        From + Angle.FromRadians(travelled.Metres / TrackRadius.Metres);

    private Finding OpenExcursions(
        IReadOnlyList<LoggedExcursion> group,
        IReadOnlyList<ParameterWindow> windows,
        Vessel vessel,
        Actor actor,
        DateTimeOffset at
    )
    {
        var description = string.Join(" ", group.Select(e => Describe(e, windows)));
        return Finding.Open(
            vessel,
            StepSequence,
            FindingOrigin.Excursion,
            description.Length <= Finding.LongestText
                ? description
                : description[..(Finding.LongestText - 1)] + "…",
            this,
            new SeamPlace(
                JointCode,
                PassNumber,
                group.Select(e => e.StartAngle).Min(),
                group.Select(e => e.EndAngle).Max()
            ),
            actor,
            at
        );
    }

    private string Describe(LoggedExcursion excursion, IReadOnlyList<ParameterWindow> windows)
    {
        var window = windows.First(w => w.Parameter == excursion.Parameter);
        var extreme = ParameterUnits.FromSi(excursion.Parameter, excursion.ExtremeSi, window.Unit);
        var limit = window.LimitOf(excursion);
        var where = excursion.Phase is { } word ? $" in the {word}" : "";
        return FormattableString.Invariant(
            $"{ParameterNames.Of(excursion.Parameter)} {(excursion.IsAbove ? "above" : "below")} its window{where} on {JointCode} pass {PassNumber}: {extreme:0.###} {window.Unit} against {limit} {window.Unit}, {excursion.StartAngle.Degrees:0.0}° to {excursion.EndAngle.Degrees:0.0}° from the start, {excursion.Length.Millimetres:0.0} mm of seam."
        );
    }
}
