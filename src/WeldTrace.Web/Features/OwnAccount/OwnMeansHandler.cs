using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Accounts;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.OwnAccount;

/// <summary>Changes the means by which a person signs in, with the act in the ledger.</summary>
public sealed class OwnMeansHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    SignInManager<Account> signIn,
    PasswordCheck passwords,
    Security.Sessions sessions,
    IHttpContextAccessor http,
    TimeProvider clock
)
{
    /// <summary>The account of whoever asks.</summary>
    public async Task<Account> AccountAsync(HttpContext http)
    {
        ArgumentNullException.ThrowIfNull(http);
        return await signIn.UserManager.GetUserAsync(http.User)
            ?? throw new UnauthorizedAccessException("Nobody is signed in.");
    }

    /// <summary>Whether it is its owner who asks.</summary>
    public Task<Outcome> ProveAsync(Account account, string? password, TypedCode? code = null) =>
        passwords.CheckAsync(account, password, "Your password is not right. Try again.", code);

    /// <summary>Lets this session go on after something that ends the others.</summary>
    public Task GoOnAloneAsync(Account account) =>
        sessions.GoOnAloneAsync(account, http.HttpContext!);

    /// <summary>Changes the account and states it in the ledger, or does neither; the session then knows of it.</summary>
    public async Task<Outcome> ChangeAsync(
        Account account,
        SignInMeans means,
        string? detail,
        Func<WeldTraceDbContext, Account, Task> change,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(account);
        ArgumentNullException.ThrowIfNull(change);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var person = await db.People.SingleAsync(p => p.Id == account.PersonId, cancellation);
        var stated = person.ChangeSignInMeans(means, detail, person.AsActor(), clock.GetUtcNow());
        if (!stated.IsAccepted)
        {
            return stated;
        }

        await change(db, await db.Users.SingleAsync(a => a.Id == account.Id, cancellation));
        var saved = await db.SaveAsync(cancellation);
        if (saved.IsAccepted)
        {
            await sessions.GoOnAsync(account, http.HttpContext!);
        }

        return saved;
    }
}
