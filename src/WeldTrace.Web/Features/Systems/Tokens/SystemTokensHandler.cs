using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Access;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Web.Acts;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Systems.Tokens;

public sealed class SystemTokenForm
{
    public string? SystemName { get; set; }

    public TokenScope Scope { get; set; }

    public int Days { get; set; } = 365;
}

public sealed class WithdrawTokenForm
{
    public Guid Id { get; set; }

    public string? Reason { get; set; }
}

/// <summary>Gives other systems their tokens, and withdraws them.</summary>
public sealed class SystemTokensHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    ActDesk desk,
    TimeProvider clock
)
{
    public async Task<IReadOnlyList<SystemToken>> ListAsync(CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db
            .SystemTokens.AsNoTracking()
            .OrderBy(t => t.SystemName)
            .ThenBy(t => t.GivenAt)
            .ToListAsync(cancellation);
    }

    /// <summary>The word, which is shown once and kept nowhere.</summary>
    public async Task<Outcome<string>> GiveAsync(
        SystemTokenForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var word = TokenWord.New();
        var token = SystemToken.Give(
            form.SystemName ?? "",
            form.Scope,
            form.Days,
            TokenWord.HashOf(word),
            actor,
            clock.GetUtcNow()
        );
        if (!token.IsAccepted)
        {
            return token.Refusals.ToList();
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        db.Add(token.Value);
        var saved = await db.SaveAsync(cancellation);
        return saved.IsAccepted ? word : saved.Refusals.ToList();
    }

    public Task<Outcome> WithdrawAsync(
        WithdrawTokenForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        return desk.DoAsync(
            PostedAct.On<SystemToken>(
                form.Id,
                m => m.Record.Withdraw(form.Reason ?? "", actor, m.At)
            ),
            actor,
            cancellation
        );
    }
}
