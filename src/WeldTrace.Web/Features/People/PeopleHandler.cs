using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Accounts;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.People;

public sealed class PersonForm : IShownVersion
{
    /// <inheritdoc/>
    public int? Version { get; set; }

    public string? PrintedName { get; set; }

    public string? SignInName { get; set; }

    // A form without any box ticked posts nothing, which is bound as null.
    public List<Role> Roles
    {
        get;
        set => field = value ?? [];
    } = [];

    public bool IsActive { get; set; }

    public string? Password { get; set; }
}

/// <summary>Enters and changes people and their accounts.</summary>
public sealed class PeopleHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    NewAccount accounts,
    IPasswordHasher<Account> hasher,
    TimeProvider clock
)
{
    private static readonly Refusal LastAdministrator = new(
        "last-administrator",
        "This is the last active administrator; make another person administrator first.",
        nameof(PersonForm.Roles)
    );

    public async Task<Person?> FindAsync(Guid id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db.People.AsNoTracking().SingleOrDefaultAsync(p => p.Id == id, cancellation);
    }

    public async Task<Outcome> EnterAsync(
        PersonForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(actor);
        var person = Person.Enter(
            form.PrintedName ?? "",
            form.SignInName ?? "",
            form.Roles,
            actor,
            clock.GetUtcNow()
        );
        List<Refusal> refusals =
        [
            .. ManagePeople.Against(actor, form.Roles.Contains(Role.Administrator)),
            .. person.Refusals,
        ];
        if (PasswordRules.FaultOf(form.Password ?? "", form.SignInName ?? "") is { } fault)
        {
            refusals.Add(new Refusal("password", fault, nameof(form.Password)));
        }

        if (refusals.Count > 0)
        {
            return Outcome.From(refusals);
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        db.AddRange(
            person.Value!,
            accounts.For(person.Value!, form.Password!, mustChangePassword: true)
        );
        return await db.SaveAsync(cancellation);
    }

    public async Task<Outcome> ChangeAsync(
        Guid id,
        PersonForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(actor);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var person = await db.People.SingleOrDefaultAsync(p => p.Id == id, cancellation);
        var account = await db.Users.SingleOrDefaultAsync(a => a.PersonId == id, cancellation);
        if (person is null || account is null)
        {
            return Outcome.Refused("person", "There is no such person.");
        }

        var refusals = await RefusalsAsync(db, person, form, actor, cancellation);
        if (refusals.Count > 0)
        {
            return Outcome.From(refusals);
        }

        var outcome = person.Change(
            form.PrintedName ?? "",
            form.Roles,
            form.IsActive,
            actor,
            clock.GetUtcNow()
        );
        if (!outcome.IsAccepted)
        {
            return outcome;
        }

        if (SetPassword(account, form.Password) || !form.IsActive)
        {
            await db.ErasePinsAsync(account.Id, cancellation);
            await db.EndSessionsAsync(
                account.Id,
                null,
                SessionEnd.Administrator,
                clock.GetUtcNow(),
                cancellation
            );
        }
        else if (form.Roles.Contains(Role.Administrator))
        {
            // An administrator has no PIN.
            await db.ErasePinsAsync(account.Id, cancellation);
        }

        return await db.SaveEditAsync(person, form, cancellation);
    }

    private static async Task<List<Refusal>> RefusalsAsync(
        WeldTraceDbContext db,
        Person person,
        PersonForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        var isAdministrator = person.Roles.Contains(Role.Administrator);
        List<Refusal> refusals =
        [
            .. ManagePeople.Against(
                actor,
                isAdministrator || form.Roles.Contains(Role.Administrator)
            ),
        ];
        if (
            !string.IsNullOrEmpty(form.Password)
            && PasswordRules.FaultOf(form.Password, person.SignInName) is { } fault
        )
        {
            refusals.Add(new Refusal("password", fault, nameof(form.Password)));
        }

        var stays = form.IsActive && form.Roles.Contains(Role.Administrator);
        if (isAdministrator && !stays)
        {
            var others = await db
                .People.AsNoTracking()
                .Where(p => p.IsActive && p.Id != person.Id)
                .ToListAsync(cancellation);
            if (!others.Any(p => p.Roles.Contains(Role.Administrator)))
            {
                refusals.Add(LastAdministrator);
            }
        }

        return refusals;
    }

    private bool SetPassword(Account account, string? password)
    {
        if (string.IsNullOrEmpty(password))
        {
            return false;
        }

        account.PasswordHash = hasher.HashPassword(account, password);
        (account.MustChangePassword, account.AccessFailedCount, account.LockoutEnd) = (
            true,
            0,
            null
        );
        account.SecurityStamp = NewAccount.Stamp();
        return true;
    }
}
