using WeldTrace.Domain.Findings;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.Vessels;

namespace WeldTrace.Domain.Welding;

/// <summary>The bounds of the phases as an engineer corrected them.</summary>
/// <param name="Version">From 2; 1 is what was found.</param>
/// <param name="Reason">Why.</param>
/// <param name="By">Printed name.</param>
/// <param name="At">UTC instant.</param>
/// <param name="Before">The phases that the correction replaced.</param>
public sealed record PhaseCorrection(
    int Version,
    string Reason,
    string By,
    DateTimeOffset At,
    IReadOnlyList<LoggedPhase> Before
);

// The phases that the log is judged by, corrected.
public sealed partial class WeldRun
{
    /// <summary>Corrections of the phases, oldest first; null when there was none.</summary>
    public IReadOnlyList<PhaseCorrection>? PhaseCorrections { get; private set; }

    /// <summary>Whether a person may correct the phases now.</summary>
    public Outcome MayCorrectPhases(Actor actor)
    {
        ArgumentNullException.ThrowIfNull(actor);
        return CheckCorrection(actor).ToOutcome();
    }

    /// <summary>Takes the log as judged anew by phases that an engineer stated; the log itself stays as it is.</summary>
    /// <param name="judged">What the same log shows by them.</param>
    /// <param name="reason">Why; 1 to 1000 characters.</param>
    /// <param name="windows">Windows it was judged against.</param>
    /// <param name="vessel">Vessel.</param>
    /// <param name="tool">Tool.</param>
    /// <param name="actor">Engineer.</param>
    /// <param name="at">UTC instant.</param>
    /// <returns>Findings for excursions that were not there before. Earlier findings stay: people decide on them.</returns>
    public Outcome<IReadOnlyList<Finding>> CorrectPhases(
        LogSummary judged,
        string reason,
        IReadOnlyList<ParameterWindow> windows,
        Vessel vessel,
        Tool tool,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(judged);
        ArgumentNullException.ThrowIfNull(vessel);
        ArgumentNullException.ThrowIfNull(tool);
        var checks = CheckCorrection(actor)
            .Text(reason, LongestText, "Say why the phases are corrected", "Reason")
            .That(
                judged.OriginalSha256 == Log?.OriginalSha256,
                "log",
                "The phases belong to another log than that of this run."
            );
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var before = Log!;
        PhaseCorrections =
        [
            .. PhaseCorrections ?? [],
            new(
                (PhaseCorrections?.Count ?? 0) + 2,
                reason.Trim(),
                actor.PrintedName,
                at,
                before.Phases
            ),
        ];
        (Log, Travelled) = (judged, judged.Travelled);
        tool.Charge(
            new ToolUse(Id, VesselSerial, judged.Travelled, ChargeBasis.ProcessLog, at, JointCode),
            actor
        );
        Note(actor, at, "phases of the process log corrected", reason.Trim());
        return ExcursionGroups
            .Of(judged.HardExcursions)
            .Where(group => !group.All(e => before.HardExcursions.Any(b => Overlap(b, e))))
            .Select(group => OpenExcursions(group, windows, vessel, actor, at))
            .ToList()
            .AsReadOnly();
    }

    private static bool Overlap(LoggedExcursion one, LoggedExcursion other) =>
        one.Parameter == other.Parameter
        && one.StartSeconds <= other.EndSeconds
        && other.StartSeconds <= one.EndSeconds;

    private Checks CheckCorrection(Actor actor) =>
        new Checks()
            .Role(actor, Role.Engineer)
            .That(Log is not null, "log", $"The run {Label} has no process log yet.")
            .That(
                !IsSealed,
                "state",
                $"The run {Label} is signed; its log can't change. Report what you see as a finding."
            );
}
