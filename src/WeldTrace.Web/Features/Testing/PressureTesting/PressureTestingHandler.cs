using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Attachments;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Features.Testing.Logs;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Testing.PressureTesting;

/// <summary>Sets a pressure test up and records its stages one by one.</summary>
public sealed class PressureTestingHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    PasswordCheck passwords,
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

    public async Task<Outcome> BeginAsync(
        string serial,
        int sequence,
        BeginPressureForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        if (await db.PressureTests.AnyAsync(t => t.Id == form.Id, cancellation))
        {
            return Outcome.Accepted;
        }

        var examiner = await db.ExaminerAsync(actor, clock.GetUtcNow(), cancellation);
        if (await db.FindTestFactsAsync(serial, sequence, examiner, cancellation) is not { } facts)
        {
            return StepNotFound.Outcome(serial, sequence);
        }

        var entries = new Entries();
        var setUp = form.Read(entries);
        if (entries.Refusals.Count > 0)
        {
            return Outcome.From(entries.Refusals);
        }

        facts = facts with
        {
            Typed = await db.TypedInstrumentsAsync(
                cancellation,
                (nameof(form.Gauge), form.Gauge),
                (nameof(form.Thermometer), form.Thermometer),
                (nameof(form.DimensionInstrument), form.DimensionInstrument)
            ),
        };
        form.Id = FormIdentity.OrNew(form.Id, clock);
        var at = clock.GetUtcNow();
        var test = PressureTest.Begin(form.Id, facts, setUp, form.Remark, actor, at);
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
        return await db.SaveAsync(cancellation);
    }

    public async Task<Outcome> RecordStageAsync(
        string serial,
        int sequence,
        PressureStageForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var examiner = await db.ExaminerAsync(actor, clock.GetUtcNow(), cancellation);
        if (await db.FindTestFactsAsync(serial, sequence, examiner, cancellation) is not { } facts)
        {
            return StepNotFound.Outcome(serial, sequence);
        }

        var plan = facts.Design.Content.Pressures;
        if (
            facts.Unsigned.OfType<PressureTest>().SingleOrDefault() is not { } test
            || test.Ladder(plan).ElementAtOrDefault(form.StageNumber - 1) is not { } stage
        )
        {
            return Outcome.Refused(
                "stage",
                "No pressure test of this step is under way, or its ladder has no such stage. Load the page anew."
            );
        }

        var read = await StageFiles.ReadAsync(form, stage, plan, test.SetUp, cancellation);
        if (!read.IsAccepted)
        {
            return read.WithoutValue();
        }

        if (WasSentTwice(test, form.StageNumber, read.Value.Reading, actor))
        {
            return Outcome.Accepted;
        }

        var outcome = test.RecordStage(
            form.StageNumber,
            read.Value.Reading,
            facts.Design,
            actor,
            clock.GetUtcNow()
        );
        if (!outcome.IsAccepted)
        {
            return outcome;
        }

        foreach (var file in read.Value.Files)
        {
            await db.KeepAsync(file, cancellation);
        }

        return await db.SaveAsync(cancellation);
    }

    /// <summary>What another system is told of a stage that it recorded.</summary>
    public async Task<PushedStage> PushedAsync(
        string serial,
        int sequence,
        int stage,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var test = await db
            .PressureTests.AsNoTracking()
            .SingleAsync(
                t =>
                    t.VesselSerial == serial
                    && t.StepSequence == sequence
                    && t.SignedAt == null
                    && t.Withdrawal == null,
                cancellation
            );
        var result = test.Stages.ElementAtOrDefault(stage - 1);
        return new PushedStage(
            serial,
            sequence,
            stage,
            result?.Verdict.ToString().ToLowerInvariant(),
            result?.Sentence
                ?? $"The test stands: {test.OpenDeparture?.Sentence} An engineer or the quality manager decides first."
        );
    }

    /// <summary>The logged samples of the stages of a test, thinned for drawing.</summary>
    public async Task<
        IReadOnlyDictionary<int, IReadOnlyList<Engineering.PressureTesting.TraceSample>>
    > TracesAsync(PressureTest? test, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db.TracesAsync(test, cancellation);
    }

    // Compared as they are written down: a reading may hold a list of photographs.
    private static bool WasSentTwice(
        PressureTest test,
        int number,
        StageReading reading,
        Actor actor
    ) =>
        test.Stages.ElementAtOrDefault(number - 1) is { } done
        && Text(done.Reading) == Text(reading)
        && done.By == actor.PrintedName;

    private static string Text(StageReading reading) =>
        JsonSerializer.Serialize(reading, DomainJson.Options);
}
