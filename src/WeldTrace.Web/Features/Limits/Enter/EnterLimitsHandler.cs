using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Limits.Enter;

/// <summary>Enters a new table, or the next edition of one, signed.</summary>
public sealed class EnterLimitsHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    PasswordCheck passwords,
    TimeProvider clock
)
{
    public async Task<LimitTable?> FindAsync(Guid id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db
            .LimitTables.AsNoTracking()
            .SingleOrDefaultAsync(t => t.Id == id, cancellation);
    }

    /// <param name="revised">Edition that gets a successor; null for a new table.</param>
    /// <param name="form">As typed.</param>
    /// <param name="actor">Quality manager.</param>
    /// <param name="cancellation">Nothing is saved.</param>
    public async Task<Outcome<LimitTable>> HandleAsync(
        Guid? revised,
        EnterLimitsForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var before = revised is null
            ? null
            : await db.LimitTables.SingleOrDefaultAsync(t => t.Id == revised, cancellation);
        if (revised is not null && before is null)
        {
            return new Refusal("limits", "There is no such table.");
        }

        var at = clock.GetUtcNow();
        var text = form.Read();
        var entered = before is null
            ? LimitTable.Enter(form.Code ?? "", form.Kind, text, actor, at)
            : before.Revise(text, form.Reason ?? "", actor, at);
        if (!entered.IsAccepted)
        {
            return entered.Refusals.Select(AtField).ToList();
        }

        var proved = await passwords.ForSignatureAsync(actor, form.Password, cancellation);
        if (!proved.IsAccepted)
        {
            return proved.Refusals.ToList();
        }

        db.AddRange(entered.Value, Signature.Of(entered.Value, actor, LimitTable.EnterMeaning, at));
        var saved = await db.SaveAsync(cancellation);
        return saved.IsAccepted ? entered : saved.Refusals.Select(AtField).ToList();
    }

    private static Refusal AtField(Refusal refusal) =>
        refusal switch
        {
            { Code: "exists" } => refusal with { Field = nameof(EnterLimitsForm.Code) },
            { Field: nameof(LimitTable.ChangeReason) } => refusal with
            {
                Field = nameof(EnterLimitsForm.Reason),
            },
            _ => refusal,
        };
}
