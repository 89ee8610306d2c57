using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Testing.RecordLeakTest;

public sealed class RecordLeakTestHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
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
            Typed = await db.TypedInstrumentsAsync(
                cancellation,
                (LeakTest.Gauge, form.Gauge),
                (LeakTest.Thermometer, form.Thermometer)
            ),
        };
        var entries = new Entries();
        var at = clock.GetUtcNow();
        var id = form.Id = FormIdentity.OrNew(form.Id, clock);
        Outcome<LeakTest> test;
        if (method == LeakMethod.PressureDecay)
        {
            var seen = form.ReadDecay(entries);
            test =
                entries.Refusals.Count > 0
                    ? entries.Refusals.ToList()
                    : LeakTest.RecordDecay(id, facts, seen, form.Remark, actor, at);
        }
        else
        {
            var seen = form.ReadBubbles(entries);
            test =
                entries.Refusals.Count > 0
                    ? entries.Refusals.ToList()
                    : LeakTest.RecordBubbles(id, facts, seen, form.Remark, actor, at);
        }

        if (!test.IsAccepted)
        {
            return test.WithoutValue();
        }

        db.Add(test.Value);
        return await db.SaveAsync(cancellation);
    }
}
