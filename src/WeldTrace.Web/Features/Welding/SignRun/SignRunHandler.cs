using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Welding.SignRun;

/// <summary>The operator certifies a run by password; it is closed from then on.</summary>
public sealed class SignRunHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    PasswordCheck passwords,
    TimeProvider clock
)
{
    /// <summary>What the signature means, as it is shown to the signer.</summary>
    public const string Meaning = "I welded this run as recorded here.";

    public async Task<Outcome> HandleAsync(
        Guid id,
        SignRunForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var known = await passwords.ForSignatureAsync(actor, form.Password, cancellation);
        if (!known.IsAccepted)
        {
            return known;
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        if (await db.FindRunAsync(id, cancellation) is not { } records)
        {
            return Outcome.Refused("run", "There is no such run.");
        }

        var at = clock.GetUtcNow();
        var repaired = records.Run.Repair is { } repair
            ? await db.Findings.SingleAsync(f => f.Id == repair.Finding.Id, cancellation)
            : null;
        var outcome = records.Run.Sign(records.Vessel, actor, at, repaired);
        if (!outcome.IsAccepted)
        {
            return outcome;
        }

        db.Add(Signature.Of(records.Run, actor, Meaning, at));
        return await db.SaveAsync(cancellation);
    }
}
