using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Welding;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;

namespace WeldTrace.Web.Features.Welding;

/// <summary>Starts a run when every rule holds.</summary>
public sealed class StartRunHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    TimeProvider clock
)
{
    public async Task<Outcome> HandleAsync(
        string serial,
        int sequence,
        StartRunForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        if (await IsStartedAsync(db, form.Id, cancellation))
        {
            return Outcome.Accepted;
        }

        var tool = await db.FindToolAsync(form.Tool, cancellation);
        var machine = await db.FindMachineAsync(form.Machine, cancellation);
        var facts = await db.FindWeldGateFactsAsync(serial, sequence, tool, cancellation);
        List<Refusal> missing = [];
        Require(form.Id != Guid.Empty, "form", "The page was not sent whole; load it again.", null);
        Require(facts is not null, "step", $"{serial} has no weld step {sequence}.", null);
        Require(
            machine is not null,
            "machine",
            "Scan or choose the machine.",
            nameof(form.Machine)
        );
        Require(
            form.Travel is not null,
            "travel",
            "Say which way the machine is set to travel.",
            nameof(form.Travel)
        );
        if (missing.Count > 0)
        {
            return Outcome.From(missing);
        }

        var run = WeldRun.Start(
            form.Id,
            facts!,
            machine!,
            form.Travel!.Value,
            actor,
            clock.GetUtcNow()
        );
        if (!run.IsAccepted)
        {
            // A second press may be judged after the first was saved: then its own run is what stands in the way.
            return await IsStartedAsync(db, form.Id, cancellation)
                ? Outcome.Accepted
                : run.WithoutValue();
        }

        return await SaveAsync(db, run.Value, cancellation);

        void Require(bool holds, string code, string sentence, string? field)
        {
            if (!holds)
            {
                missing.Add(new Refusal(code, sentence, field));
            }
        }
    }

    // Two presses at the same moment both come this far; the one that loses the race finds its run started.
    private static async Task<Outcome> SaveAsync(
        WeldTraceDbContext db,
        WeldRun run,
        CancellationToken cancellation
    )
    {
        db.Add(run);
        var saved = await db.SaveAsync(cancellation);
        return saved.IsAccepted || await IsStartedAsync(db, run.Id, cancellation)
            ? Outcome.Accepted
            : saved;
    }

    private static Task<bool> IsStartedAsync(
        WeldTraceDbContext db,
        Guid id,
        CancellationToken cancellation
    ) => db.WeldRuns.AnyAsync(r => r.Id == id, cancellation);
}
