using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Attachments;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Features.Testing.Logs;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Testing.RecordLeakTest;

public sealed class RecordLeakTestHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    PasswordCheck passwords,
    ArrivedReadings arrivals,
    TimeProvider clock
)
{
    public async Task<TestFacts?> FindAsync(
        string serial,
        int sequence,
        Actor actor,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var examiner = await db.ExaminerAsync(actor, clock.GetUtcNow(), cancellation);
        return await db.FindTestFactsAsync(serial, sequence, examiner, cancellation);
    }

    public async Task<Outcome> HandleAsync(
        string serial,
        int sequence,
        LeakMethod method,
        RecordLeakTestForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        if (await db.LeakTests.AnyAsync(t => t.Id == form.Id, cancellation))
        {
            return Outcome.Accepted;
        }

        var examiner = await db.ExaminerAsync(actor, clock.GetUtcNow(), cancellation);
        if (await db.FindTestFactsAsync(serial, sequence, examiner, cancellation) is not { } facts)
        {
            return StepNotFound.Outcome(serial, sequence);
        }

        facts = facts with
        {
            CautionsRead = form.CautionsRead,
            Typed = await db.TypedInstrumentsAsync(
                cancellation,
                (LeakTest.Gauge, form.Gauge),
                (LeakTest.Thermometer, form.Thermometer),
                (LeakTest.LeakMark, form.Tracer.LeakMark)
            ),
        };
        form.Id = FormIdentity.OrNew(form.Id, clock);
        var brought =
            method == LeakMethod.PressureDecay
                ? await BringAsync(form, facts.Vessel.Id, cancellation)
                : null;
        if (brought is { IsAccepted: false })
        {
            return brought.WithoutValue();
        }

        var kept = await KeepAsync(db, method, form, facts, brought?.Value, actor, cancellation);
        if (kept.IsAccepted && form.Arrived is { } taken)
        {
            arrivals.Remove(facts.Vessel.Id, taken);
        }

        return kept;
    }

    /// <summary>Keeps the readings of another system until an inspector takes them.</summary>
    public async Task<Outcome<PushedDecay>> PushAsync(
        string serial,
        int sequence,
        string system,
        IFormFile log,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var nobody = new ExaminerFacts([], default);
        if (await db.FindTestFactsAsync(serial, sequence, nobody, cancellation) is not { } facts)
        {
            return StepNotFound.Outcome(serial, sequence).Refusals.ToList();
        }

        if (TestRecord.RefusalsOfStep(facts, StepKind.LeakTest) is { Count: > 0 } refusals)
        {
            return refusals.ToList();
        }

        var brought = await BenchLogReader.ReadAsync(log, "log", cancellation);
        var readings = brought.IsAccepted
            ? LoggedReadings.Decay(brought.Value, "log")
            : brought.Refusals.ToList();
        if (!readings.IsAccepted)
        {
            return readings.Refusals.ToList();
        }

        var kept = await arrivals.KeepAsync(facts.Vessel.Id, system, log, cancellation);
        return kept.IsAccepted
            ? new PushedDecay(
                serial,
                sequence,
                brought.Value!.Trace.Samples.Count,
                "They wait for a day, until the inspector takes them into the leak test."
            )
            : kept.Refusals.ToList();
    }

    private async Task<Outcome<BroughtLog>?> BringAsync(
        RecordLeakTestForm form,
        Guid vesselId,
        CancellationToken cancellation
    ) =>
        form.Log is { Length: > 0 } log
            ? await BenchLogReader.ReadAsync(log, nameof(form.Log), cancellation)
        : form.Arrived is { } arrived
            ? await arrivals.ReadAsync(vesselId, arrived, nameof(form.Log), cancellation)
        : null;

    private async Task<Outcome> KeepAsync(
        WeldTraceDbContext db,
        LeakMethod method,
        RecordLeakTestForm form,
        TestFacts facts,
        BroughtLog? brought,
        Actor actor,
        CancellationToken cancellation
    )
    {
        var at = clock.GetUtcNow();
        var test = Record(method, form, facts, brought, actor, at);
        if (!test.IsAccepted)
        {
            return test.WithoutValue();
        }

        var proved = await passwords.ForSignatureAsync(actor, form.Password, cancellation);
        if (!proved.IsAccepted)
        {
            return proved;
        }

        db.AddRange(test.Value, Signature.Of(test.Value, actor, HazardAcknowledgement.Meaning, at));
        if (brought is not null)
        {
            await db.KeepAsync(brought.Attachment, cancellation);
        }

        return await db.SaveAsync(cancellation);
    }

    private static Outcome<LeakTest> Record(
        LeakMethod method,
        RecordLeakTestForm form,
        TestFacts facts,
        BroughtLog? log,
        Actor actor,
        DateTimeOffset at
    )
    {
        var entries = new Entries();
        return method switch
        {
            LeakMethod.PressureDecay => Decay(form, facts, log, actor, at),
            LeakMethod.ImmersionBubble => Read(
                form.ReadBubbles(entries),
                seen => LeakTest.RecordBubbles(form.Id, facts, seen, form.Remark, actor, at)
            ),
            _ => Read(
                form.Tracer.Read(entries),
                seen => LeakTest.RecordTracer(form.Id, facts, seen, form.Remark, actor, at)
            ),
        };

        Outcome<LeakTest> Read<T>(T seen, Func<T, Outcome<LeakTest>> record) =>
            entries.Refusals.Count > 0 ? entries.Refusals.ToList() : record(seen);
    }

    private static Outcome<LeakTest> Decay(
        RecordLeakTestForm form,
        TestFacts facts,
        BroughtLog? log,
        Actor actor,
        DateTimeOffset at
    )
    {
        var logged = log is null ? null : LoggedReadings.Decay(log, nameof(form.Log));
        if (logged is { IsAccepted: false })
        {
            return logged.Refusals.ToList();
        }

        var entries = new Entries();
        var seen = form.ReadDecay(entries, logged?.Value) with { Log = log?.File };
        return entries.Refusals.Count > 0
            ? entries.Refusals.ToList()
            : LeakTest.RecordDecay(form.Id, facts, seen, form.Remark, actor, at);
    }
}
