using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Ledger;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sites;
using WeldTrace.Persistence;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.FirstRun;

public sealed class FirstRunHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    NewAccount accounts,
    SiteReader sites,
    SiteKeyFolder keys,
    TimeProvider clock
)
{
    public async Task<Outcome> HandleAsync(FirstRunForm form, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(form);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        if (await db.Sites.AnyAsync(cancellation))
        {
            return Outcome.Refused("set-up", "The site is set up already; sign in instead.");
        }

        var at = clock.GetUtcNow();
        var person = Person.Enter(
            form.PrintedName ?? "",
            form.SignInName ?? "",
            [Role.Administrator],
            null,
            at
        );
        List<Refusal> refusals = [.. Site.FaultsOf(form.Name, form.TimeZoneId), .. person.Refusals];
        if (PasswordRules.FaultOf(form.Password ?? "", form.SignInName ?? "") is { } fault)
        {
            refusals.Add(new Refusal("password", fault, nameof(form.Password)));
        }

        if (refusals.Count > 0)
        {
            return Outcome.From(refusals);
        }

        var actor = person.Value!.AsActor();
        var site = Site.SetUp(form.Name!, form.TimeZoneId!, form.Units, false, actor, at);
        if (!site.IsAccepted)
        {
            return site.WithoutValue();
        }

        db.AddRange(
            person.Value!,
            site.Value,
            accounts.For(person.Value!, form.Password!, mustChangePassword: false)
        );
        db.Add(SigningKey.TakeIntoUse(keys.Current.PublicKey, actor, at));
        db.AddRange(ShippedLimits.Missing([], actor, at));
        var saved = await db.SaveAsync(cancellation);
        sites.Forget();
        return saved;
    }
}
