using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Access;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Accounts;
using WeldTrace.Web.Acts;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Tablets;

public sealed class RegisterTabletForm
{
    public string? Name { get; set; }
}

public sealed class WithdrawTabletForm
{
    public Guid Id { get; set; }

    public string? Reason { get; set; }
}

/// <summary>Registers the devices that several people use, and withdraws them.</summary>
public sealed class SharedTabletsHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    TabletCookie tablets,
    ActDesk desk,
    TimeProvider clock
)
{
    /// <summary>The tablet that asks; null when the device is none.</summary>
    public Task<SharedTablet?> ThisAsync(CancellationToken cancellation) =>
        tablets.FindAsync(cancellation);

    public async Task<IReadOnlyList<SharedTablet>> ListAsync(CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db
            .SharedTablets.AsNoTracking()
            .OrderBy(t => t.WithdrawnAt != null)
            .ThenBy(t => t.Name)
            .ToListAsync(cancellation);
    }

    /// <summary>Registers the device that asks: its browser keeps a word from then on.</summary>
    public async Task<Outcome> RegisterAsync(
        RegisterTabletForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        if (await tablets.FindAsync(cancellation) is { } known)
        {
            return Outcome.Refused(
                "known",
                $"This device is registered already, as {known.Name}; withdraw that first."
            );
        }

        var word = TokenWord.New();
        var tablet = SharedTablet.Register(
            form.Name ?? "",
            TokenWord.HashOf(word),
            actor,
            clock.GetUtcNow()
        );
        if (!tablet.IsAccepted)
        {
            return tablet.WithoutValue();
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        db.Add(tablet.Value);
        var saved = await db.SaveAsync(cancellation);
        if (saved.IsAccepted)
        {
            tablets.Keep(word);
        }

        return saved;
    }

    /// <summary>Withdraws a tablet, with every PIN set on it and every session begun on it.</summary>
    public Task<Outcome> WithdrawAsync(
        WithdrawTabletForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        return desk.DoAsync(
            new PostedAct<SharedTablet>(
                form.Id,
                async (moment, token) =>
                {
                    var outcome = moment.Record.Withdraw(form.Reason ?? "", actor, moment.At);
                    if (outcome.IsAccepted)
                    {
                        await ClearAsync(moment, token);
                    }

                    return outcome;
                }
            ),
            actor,
            cancellation
        );
    }

    private static async Task ClearAsync(
        ActMoment<SharedTablet> moment,
        CancellationToken cancellation
    )
    {
        var (db, tablet) = (moment.Db, moment.Record);
        db.AccountPins.RemoveRange(
            await db.AccountPins.Where(p => p.TabletId == tablet.Id).ToListAsync(cancellation)
        );
        var open = await db
            .AccountSessions.Where(s => s.TabletId == tablet.Id && s.EndedAt == null)
            .ToListAsync(cancellation);
        open.ForEach(s => s.End(SessionEnd.TabletWithdrawn, moment.At));
    }
}
