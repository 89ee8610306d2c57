using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Web.Acts;

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
public sealed class LimitTableHandler(IDbContextFactory<WeldTraceDbContext> contexts, ActDesk desk)
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

    public Task<Outcome> CheckAsync(
        Guid id,
        CheckLimitsForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        return desk.DoAsync(
            PostedAct.On<LimitTable>(
                id,
                moment =>
                    moment.Record.CheckAgainst(form.OwnCopy ?? "", moment.Today, actor, moment.At)
            ) with
            {
                Meaning = LimitTable.CheckMeaning,
                Password = form.Password,
            },
            actor,
            cancellation
        );
    }
}
