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
        WeldTarget target,
        StartRunForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(target);
        ArgumentNullException.ThrowIfNull(form);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        if (await IsStartedAsync(db, form.Id, cancellation))
        {
            return Outcome.Accepted;
        }

        var facts = await target.FindFactsAsync(
            db,
            new WeldChoice(form.Tool, form.Machine, actor, clock.GetUtcNow()),
            cancellation
        );
        List<Refusal> missing = [.. Missing(form, facts)];
        if (facts is null)
        {
            missing.Add(target.Missing);
        }

        if (missing.Count > 0)
        {
            return Outcome.From(missing);
        }

        var run = WeldRun.Start(form.Id, facts!, form.Travel!.Value, form.Confirmed);
        if (!run.IsAccepted)
        {
            // A second press may be judged after the first was saved: then its own run is what stands in the way.
            return await IsStartedAsync(db, form.Id, cancellation)
                ? Outcome.Accepted
                : run.WithoutValue();
        }

        return await SaveAsync(db, run.Value, cancellation);
    }

    private static IEnumerable<Refusal> Missing(StartRunForm form, WeldGateFacts? facts)
    {
        if (form.Id == Guid.Empty)
        {
            yield return new("form", "The page was not sent whole; load it again.");
        }

        if (facts is { Machine: null })
        {
            yield return new("machine", "Scan or choose the machine.", nameof(form.Machine));
        }

        if (form.Travel is null)
        {
            yield return new(
                "travel",
                "Say which way the machine is set to travel.",
                nameof(form.Travel)
            );
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
