using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Concessions;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Web.Acts;

namespace WeldTrace.Web.Features.Concessions.Show;

public sealed class GrantForm
{
    public string? Password { get; set; }
}

public sealed class DeclineForm
{
    public string? DeclinedBecause { get; set; }

    public string? Password { get; set; }
}

/// <summary>A concession with the signatures under it.</summary>
public sealed record ConcessionView(Concession Concession, IReadOnlyList<Signature> Signatures);

/// <summary>Shows a concession; the second person grants or declines it.</summary>
public sealed class ConcessionHandler(IDbContextFactory<WeldTraceDbContext> contexts, ActDesk desk)
{
    public async Task<ConcessionView?> FindAsync(Guid id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var concession = await db
            .Concessions.AsNoTracking()
            .SingleOrDefaultAsync(c => c.Id == id, cancellation);
        return concession is null
            ? null
            : new(
                concession,
                await db
                    .Signatures.AsNoTracking()
                    .Where(s => s.SignedId == id)
                    .OrderBy(s => s.At)
                    .ToListAsync(cancellation)
            );
    }

    public Task<Outcome> GrantAsync(
        Guid id,
        GrantForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        return desk.DoAsync(
            PostedAct.On<Concession>(id, moment => moment.Record.Grant(actor, moment.At)) with
            {
                Meaning = Concession.GrantMeaning,
                Password = form.Password,
            },
            actor,
            cancellation
        );
    }

    public Task<Outcome> DeclineAsync(
        Guid id,
        DeclineForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        return desk.DoAsync(
            PostedAct.On<Concession>(
                id,
                moment => moment.Record.Decline(form.DeclinedBecause ?? "", actor, moment.At)
            ) with
            {
                Meaning = Concession.DeclineMeaning,
                Password = form.Password,
            },
            actor,
            cancellation
        );
    }
}
