using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Limits.Show;

public sealed class CheckLimitsForm
{
    public string? OwnCopy { get; set; }

    public string? Password { get; set; }
}

/// <summary>An edition of a table with its other editions and the signatures under it.</summary>
public sealed record LimitTableView(
    LimitTable Table,
    IReadOnlyList<LimitTable> Editions,
    IReadOnlyList<Signature> Signatures
);

/// <summary>Shows an edition of a table, and signs that it was checked against the site's own copy.</summary>
public sealed class LimitTableHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    PasswordCheck passwords,
    SiteDay day,
    TimeProvider clock
)
{
    public async Task<LimitTableView?> FindAsync(Guid id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var table = await db
            .LimitTables.AsNoTracking()
            .SingleOrDefaultAsync(t => t.Id == id, cancellation);
        return table is null
            ? null
            : new LimitTableView(
                table,
                await db
                    .LimitTables.AsNoTracking()
                    .Where(t => t.Code == table.Code)
                    .OrderByDescending(t => t.Edition)
                    .ToListAsync(cancellation),
                await db
                    .Signatures.AsNoTracking()
                    .Where(s => s.SignedId == id)
                    .OrderBy(s => s.At)
                    .ToListAsync(cancellation)
            );
    }

    public async Task<Outcome> CheckAsync(
        Guid id,
        CheckLimitsForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var proved = await passwords.ForSignatureAsync(actor, form.Password, cancellation);
        if (!proved.IsAccepted)
        {
            return proved;
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var table = await db.LimitTables.SingleOrDefaultAsync(t => t.Id == id, cancellation);
        if (table is null)
        {
            return Outcome.Refused("limits", "There is no such table.");
        }

        var at = clock.GetUtcNow();
        var today = await day.TodayAsync(cancellation);
        var outcome = table.CheckAgainst(form.OwnCopy ?? "", today, actor, at);
        if (!outcome.IsAccepted)
        {
            return outcome;
        }

        db.Add(Signature.Of(table, actor, LimitTable.CheckMeaning, at));
        return await db.SaveAsync(cancellation);
    }
}
