using WeldTrace.Domain.People;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Equipment;

public sealed partial class Machine
{
    /// <summary>What the signature under a clearing means.</summary>
    public const string ClearMeaning =
        "I have looked into the doubt or malfunction and clear the machine for the reason given.";

    /// <summary>What the signature under an opening means.</summary>
    public const string ReopenMeaning =
        "I have seen the records of the test welds and open the machine for production again.";

    private static readonly Role[] Reporters =
    [
        Role.Engineer,
        Role.Operator,
        Role.Inspector,
        Role.QualityManager,
    ];

    private const string TestSource = "ISO 25239-5:2020 4.4.2; NASA-STD-5006A GWR 15";

    /// <summary>
    /// Records what happened. Anyone may state a doubt; some events lock the machine, others ask for test welds
    /// (<see cref="MachineStanding"/>).
    /// </summary>
    /// <param name="kind">What happened; not a test weld, a clearing or an opening, which have acts of their own.</param>
    /// <param name="on">Day on which it happened; not in the future.</param>
    /// <param name="text">What was seen or done; 1 to 600 characters.</param>
    /// <param name="fileSha256">A paper handed in with it, if any.</param>
    /// <param name="today">Day at the site.</param>
    /// <param name="actor">Who records it.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome Report(
        MachineEventKind kind,
        DateOnly on,
        string text,
        string? fileSha256,
        DateOnly today,
        Actor actor,
        DateTimeOffset at
    )
    {
        var checks = CheckEntry(on, text, today)
            .That(
                kind is < MachineEventKind.TestWeld,
                "kind",
                "Choose what happened.",
                nameof(MachineEvent.Kind)
            );
        if (!MayReport(actor, kind))
        {
            checks.Role(actor, Reporters);
        }

        return Add(checks, kind, on, text, fileSha256, null, actor, at);
    }

    /// <summary>Whether a person may report such an event; anyone may state a doubt (ISO 25239-5:2020 4.4.1).</summary>
    public static bool MayReport(Actor actor, MachineEventKind kind)
    {
        ArgumentNullException.ThrowIfNull(actor);
        return kind == MachineEventKind.Doubt
            || (kind < MachineEventKind.TestWeld && actor.HasAny(Reporters));
    }

    /// <summary>Records a test weld; after one that was not satisfactory the count begins anew.</summary>
    /// <param name="procedure">Released procedure it was welded to.</param>
    /// <param name="welder">Who welded; null when nobody was chosen.</param>
    /// <param name="examiner">Who examined it; null when nobody was chosen.</param>
    /// <param name="isSatisfactory">Whether it met the acceptance levels of the procedure.</param>
    /// <param name="on">Day of the weld.</param>
    /// <param name="result">What was examined and found; 1 to 600 characters.</param>
    /// <param name="fileSha256">The record of the examination; needed.</param>
    /// <param name="today">Day at the site.</param>
    /// <param name="actor">Who enters it.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome RecordTestWeld(
        ProcedureRevision? procedure,
        Person? welder,
        Person? examiner,
        bool isSatisfactory,
        DateOnly on,
        string result,
        string? fileSha256,
        DateOnly today,
        Actor actor,
        DateTimeOffset at
    )
    {
        var standing = Standing;
        var checks = CheckEntry(on, result, today)
            .Role(actor, Role.Engineer, Role.Inspector, Role.QualityManager)
            .That(
                standing.State != MachineState.InUse,
                "state",
                $"{Name} is in use; test welds are recorded after an event that asks for them."
            )
            .That(
                standing.Because is null || on >= standing.Because.On,
                "order",
                $"The weld must be made on or after {standing.Because?.On:yyyy-MM-dd}, the day of the event.",
                nameof(MachineEvent.On)
            )
            .That(
                procedure is { State: ProcedureState.Released },
                "procedure",
                "Choose a released procedure; test welds are made to a procedure in production use.",
                nameof(TestWeld.ProcedureRevisionId),
                TestSource
            )
            .That(welder is not null, "welder", "Choose who welded.", nameof(TestWeld.WelderId))
            .That(
                examiner is not null && examiner.Id != welder?.Id,
                "F17",
                "Choose who examined the weld; nobody examines what they welded.",
                nameof(TestWeld.ExaminerId)
            )
            .That(
                fileSha256 is not null,
                "file",
                "Hand in the record of the examination; the test welds are documented.",
                "File",
                TestSource
            );
        var weld = checks.AllHold ? Weld(procedure!, welder!, examiner!, isSatisfactory) : null;
        return Add(checks, MachineEventKind.TestWeld, on, result, fileSha256, weld, actor, at);
    }

    /// <summary>Clears a doubt or malfunction; to be signed. What asked for test welds still asks for them.</summary>
    public Outcome Clear(string reason, DateOnly today, Actor actor, DateTimeOffset at)
    {
        var checks = CheckEntry(today, reason, today)
            .Role(actor, Role.Engineer, Role.QualityManager)
            .That(
                Standing.State == MachineState.Locked,
                "state",
                $"No doubt or malfunction of {Name} is open."
            );
        return Add(checks, MachineEventKind.Cleared, today, reason, null, null, actor, at);
    }

    /// <summary>Opens the machine for production after its test welds; to be signed.</summary>
    public Outcome Reopen(string remark, DateOnly today, Actor actor, DateTimeOffset at)
    {
        var standing = Standing;
        var checks = CheckEntry(today, remark, today)
            .Role(actor, Role.Engineer, Role.QualityManager)
            .That(
                standing.State == MachineState.NeedsReproducibilityTest,
                "state",
                $"{Name} is {MachineWords.Of(standing.State)}; only a machine that needs test welds is opened by them."
            )
            .That(
                standing.HasTestWelds,
                "test-welds",
                $"{standing.SatisfactoryTestWelds} of {MachineStanding.TestWeldsNeeded} satisfactory test welds in a row are recorded; record the others first.",
                null,
                TestSource
            );
        return Add(checks, MachineEventKind.Reopened, today, remark, null, null, actor, at);
    }

    private static Checks CheckEntry(DateOnly on, string text, DateOnly today) =>
        new Checks()
            .That(
                on <= today,
                "future",
                "The day lies in the future; check it.",
                nameof(MachineEvent.On)
            )
            .Text(text, LongestAccount, "Say what was seen or done", nameof(MachineEvent.Text));

    private Outcome Add(
        Checks checks,
        MachineEventKind kind,
        DateOnly on,
        string text,
        string? fileSha256,
        TestWeld? weld,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(actor);
        return Do(
            checks,
            () =>
                Events = [
                    .. Events ?? [],
                    new(
                        kind,
                        on,
                        text.Trim(),
                        actor.PersonId,
                        actor.PrintedName,
                        at,
                        fileSha256,
                        weld
                    ),
                ],
            actor,
            at,
            $"machine: {MachineWords.Of(kind)}",
            text?.Trim()
        );
    }

    private static TestWeld Weld(
        ProcedureRevision procedure,
        Person welder,
        Person examiner,
        bool isSatisfactory
    ) =>
        new(
            procedure.Id,
            procedure.Label,
            welder.Id,
            welder.PrintedName,
            examiner.Id,
            examiner.PrintedName,
            isSatisfactory
        );
}
