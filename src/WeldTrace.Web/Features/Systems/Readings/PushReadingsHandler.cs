using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Access;
using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Features.Testing;
using WeldTrace.Web.Features.Testing.Logs;
using WeldTrace.Web.Features.Testing.PressureTesting;

namespace WeldTrace.Web.Features.Systems.Readings;

/// <summary>What came of readings that were sent.</summary>
/// <param name="Vessel">Serial number.</param>
/// <param name="Step">Step of the route.</param>
/// <param name="Stage">Stage that was recorded; null when the readings wait for a leak test.</param>
/// <param name="Verdict">Verdict of the stage; null when it has none yet.</param>
/// <param name="Sentence">What a person is told.</param>
public sealed record TakenReadings(
    string Vessel,
    int Step,
    int? Stage,
    string? Verdict,
    string Sentence
);

/// <summary>Takes the readings that a bench sends, by the same gates as those that an inspector types.</summary>
public sealed class PushReadingsHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    PressureTestingHandler stages,
    ArrivedReadings arrivals
)
{
    public async Task<Outcome<TakenReadings>> HandleAsync(
        SystemToken token,
        string serial,
        int sequence,
        int? stage,
        IFormFile log,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(token);
        ArgumentNullException.ThrowIfNull(log);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var nobody = new ExaminerFacts([], default);
        if (await db.FindTestFactsAsync(serial, sequence, nobody, cancellation) is not { } facts)
        {
            return StepNotFound.Outcome(serial, sequence).Refusals.ToList();
        }

        return (facts.Step.Kind, stage) switch
        {
            (StepKind.PressureTest, { } number) => await RecordAsync(
                token.AsActor(),
                facts,
                number,
                log,
                cancellation
            ),
            (StepKind.PressureTest, null) => new Refusal(
                "number",
                "Name the stage of the ladder in the address: stage=1 for the first."
            ),
            (StepKind.LeakTest, null) => await KeepAsync(token, facts, log, cancellation),
            _ => new Refusal(
                "step",
                $"Step {sequence} of {serial} takes no such readings: {facts.Step.Title}."
            ),
        };
    }

    private async Task<Outcome<TakenReadings>> RecordAsync(
        Actor actor,
        TestFacts facts,
        int number,
        IFormFile log,
        CancellationToken cancellation
    )
    {
        var (serial, step) = (facts.Vessel.Serial, facts.Step.Sequence);
        var form = new PressureStageForm { StageNumber = number, Log = log };
        var outcome = await stages.RecordStageAsync(serial, step, form, actor, cancellation);
        if (!outcome.IsAccepted)
        {
            return outcome.Refusals.ToList();
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var testId = facts.Unsigned.OfType<PressureTest>().Single().Id;
        var test = await db.PressureTests.AsNoTracking().SingleAsync(t => t.Id == testId, cancellation);
        var result = test.Stages.ElementAtOrDefault(number - 1);
        return new TakenReadings(
            serial,
            step,
            number,
            result?.Verdict.ToString().ToLowerInvariant(),
            result?.Sentence
                ?? $"The test stands: {test.OpenDeparture?.Sentence} An engineer or the quality manager decides first."
        );
    }

    private async Task<Outcome<TakenReadings>> KeepAsync(
        SystemToken token,
        TestFacts facts,
        IFormFile log,
        CancellationToken cancellation
    )
    {
        var before = LeakTest.RefusalsOfStep(facts, StepKind.LeakTest);
        if (before.Count > 0)
        {
            return before.ToList();
        }

        var brought = await BenchLogReader.ReadAsync(log, "log", cancellation);
        var readings = brought.IsAccepted
            ? LoggedReadings.Decay(brought.Value, "log")
            : brought.Refusals.ToList();
        if (!readings.IsAccepted)
        {
            return readings.Refusals.ToList();
        }

        await arrivals.KeepAsync(facts.Vessel.Id, token.SystemName, log, cancellation);
        return new TakenReadings(
            facts.Vessel.Serial,
            facts.Step.Sequence,
            null,
            null,
            $"{brought.Value!.Trace.Samples.Count} samples wait; the inspector takes them when recording the leak test, and they are kept for a day."
        );
    }
}
