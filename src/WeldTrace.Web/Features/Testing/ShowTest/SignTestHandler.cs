using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Testing.ShowTest;

/// <summary>Signs a recorded test, or takes it back.</summary>
public sealed class SignTestHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    PasswordCheck passwords,
    TimeProvider clock
)
{
    private static readonly Outcome Missing = Outcome.Refused(
        "missing",
        "There is no such test. Look for it in the list of tests."
    );

    public async Task<Outcome> SignAsync(
        Guid id,
        SignTestForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(actor);
        var proved = await passwords.ForSignatureAsync(actor, form.Password, cancellation);
        if (!proved.IsAccepted)
        {
            return proved;
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        if (await db.FindTestAsync(id, cancellation) is not { } test)
        {
            return Missing;
        }

        var at = clock.GetUtcNow();
        var vessel = await db.Vessels.SingleAsync(v => v.Id == test.VesselId, cancellation);
        var weldedBy = await db.WhoWeldedAsync(vessel.Id, cancellation);
        var examiner = await db.ExaminerAsync(actor, at, cancellation);
        var signed = test.Sign(vessel, weldedBy, examiner, actor, at);
        if (!signed.IsAccepted)
        {
            return signed.WithoutValue();
        }

        if (signed.Value.Finding is { } finding)
        {
            db.Add(finding);
        }

        await db.TakeSampleAsync(test, vessel, actor, at, cancellation);
        db.Add(Signature.Of(test, actor, test.MeaningFor(actor), at));
        return await db.SaveAsync(cancellation);
    }

    public async Task<Outcome> WithdrawAsync(
        Guid id,
        WithdrawTestForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(actor);
        var proved = await passwords.ForSignatureAsync(actor, form.Password, cancellation);
        if (!proved.IsAccepted)
        {
            return proved;
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        if (await db.FindTestAsync(id, cancellation) is not { } test)
        {
            return Missing;
        }

        var at = clock.GetUtcNow();
        var withdrawn = test.Withdraw(form.Reason ?? "", actor, at);
        if (!withdrawn.IsAccepted)
        {
            return withdrawn;
        }

        db.Add(Signature.Of(test, actor, TestRecord.WithdrawalMeaning, at));
        return await db.SaveAsync(cancellation);
    }
}
