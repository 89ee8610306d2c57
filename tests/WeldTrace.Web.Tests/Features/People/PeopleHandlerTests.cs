using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence.Accounts;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.People;

namespace WeldTrace.Web.Tests.Features.People;

public sealed class PeopleHandlerTests(PostgresServerFixture server)
{
    private const string First = "six slow tugs at sea";

    [Fact]
    public async Task Enter_Whole_IsRecorded_AndMustChangeThePasswordBeforeSigning()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var admin = await site.EnterAsync("Mads Dahl", Role.Administrator);

        Accept.All(await EnterAsync(site, admin, Form()));

        var person = await PersonAsync(site, "nina");
        Assert.Equal([Role.Operator, Role.Inspector], person.Roles);
        Assert.True((await AccountAsync(site, person)).MustChangePassword);
        Assert.Equal(1, await site.EntriesAsync(person.Id));
        var signing = await site.Passwords.ForSignatureAsync(
            person.AsActor(),
            First,
            CancellationToken.None
        );
        Assert.Equal("password:Password", WorkingSite.Text(signing.Refusals));
        Assert.Empty(await site.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Enter_ByARoleThatMayNot_IsRefused()
    {
        await using var site = await WorkingSite.OpenAsync(server);

        var outcome = await EnterAsync(site, SamplePeople.Engineer, Form());

        Assert.Equal("role:", WorkingSite.Text(outcome.Refusals));
        Assert.Equal(0, await CountAsync(site));
    }

    [Fact]
    public async Task Enter_AnAdministrator_ByTheQualityManager_IsRefused()
    {
        await using var site = await WorkingSite.OpenAsync(server);

        var outcome = await EnterAsync(
            site,
            SamplePeople.QualityManager,
            Form(f => f.Roles = [Role.Administrator])
        );

        Assert.Equal("administrator:Roles", WorkingSite.Text(outcome.Refusals));
        Assert.Equal(0, await CountAsync(site));
    }

    [Theory]
    [InlineData(null, null)]
    [InlineData("", " ")]
    [InlineData("Nina\0Vik", "nina\0")]
    [InlineData("Nina\nVik", "ni\tna")]
    public async Task Enter_WithoutNames_OrWithControlCharacters_TellsAll(
        string? name,
        string? signInName
    )
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var form = Form(f =>
            (f.PrintedName, f.SignInName, f.Roles, f.Password) = (name, signInName, [], "short")
        );

        var outcome = await EnterAsync(site, SamplePeople.QualityManager, form);

        Assert.Equal(
            "printed-name:PrintedName roles:Roles sign-in-name:SignInName password:Password",
            WorkingSite.Text(outcome.Refusals)
        );
        Assert.Equal(0, await CountAsync(site));
    }

    [Fact]
    public async Task Enter_ASignInNameThatIsTaken_IsRefused()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        Accept.All(await EnterAsync(site, SamplePeople.QualityManager, Form()));

        var outcome = await EnterAsync(
            site,
            SamplePeople.QualityManager,
            Form(f => f.PrintedName = "Nina Berg")
        );

        Assert.Equal("exists", Assert.Single(outcome.Refusals).Code);
        Assert.Equal(1, await CountAsync(site));
    }

    [Fact]
    public async Task Change_RolesAndName_IsRecorded_AndTheOldNameStaysInTheLedger()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var person = await EnteredAsync(site);

        Accept.All(
            await ChangeAsync(
                site,
                person.Id,
                Edit(person, f => (f.PrintedName, f.Roles) = ("Nina Berg", [Role.Auditor]))
            )
        );

        var changed = await site.ReadAsync<Person>(person.Id);
        Assert.Equal(("Nina Berg", 2), (changed.PrintedName, changed.Version));
        Assert.Equal([Role.Auditor], changed.Roles);
        Assert.Equal(2, await site.EntriesAsync(person.Id));
        Assert.Empty(await site.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Change_ByARoleThatMayNot_OrOfNobody_IsRefused()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var person = await EnteredAsync(site);

        var byOperator = await ChangeAsync(site, person.Id, Edit(person), SamplePeople.Operator);
        var ofNobody = await ChangeAsync(site, Guid.Empty, Edit(person));

        Assert.Equal("role:", WorkingSite.Text(byOperator.Refusals));
        Assert.Equal("person:", WorkingSite.Text(ofNobody.Refusals));
        Assert.Equal(1, await site.EntriesAsync(person.Id));
    }

    [Fact]
    public async Task Change_WithAFault_IsRefused()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var person = await EnteredAsync(site);

        var nameless = await ChangeAsync(
            site,
            person.Id,
            Edit(person, f => (f.PrintedName, f.Roles) = (" ", []))
        );
        var guessed = await ChangeAsync(
            site,
            person.Id,
            Edit(person, f => f.Password = "nina nina nina nina")
        );

        Assert.Equal("printed-name:PrintedName roles:Roles", WorkingSite.Text(nameless.Refusals));
        Assert.Equal("password:Password", WorkingSite.Text(guessed.Refusals));
        Assert.Equal(1, (await site.ReadAsync<Person>(person.Id)).Version);
    }

    [Fact]
    public async Task Deactivate_EndsSigningIn_AndKeepsThePerson()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var person = await EnteredAsync(site);

        Accept.All(await ChangeAsync(site, person.Id, Edit(person, f => f.IsActive = false)));

        Assert.False((await site.ReadAsync<Person>(person.Id)).IsActive);
        Assert.False(await new Web.Security.ActivePeople(site.Database).IsActiveAsync(person.Id));
        Assert.Equal(2, await site.EntriesAsync(person.Id));
    }

    [Fact]
    public async Task Deactivate_TheLastAdministrator_IsRefused_UntilThereIsAnother()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var admin = await site.EnterAsync("Mads Dahl", Role.Administrator);
        var person = await site.ReadAsync<Person>(admin.PersonId);
        var away = Edit(person, f => f.IsActive = false);
        var demoted = Edit(person, f => f.Roles = [Role.Engineer]);

        var alone = await ChangeAsync(site, person.Id, away, admin);
        var without = await ChangeAsync(site, person.Id, demoted, admin);
        await site.EnterAsync("Mona Lie", Role.Administrator);
        var second = await ChangeAsync(site, person.Id, away, admin);

        Assert.Equal("last-administrator:Roles", WorkingSite.Text(alone.Refusals));
        Assert.Equal("last-administrator:Roles", WorkingSite.Text(without.Refusals));
        Assert.Empty(second.Refusals);
    }

    [Fact]
    public async Task Change_AnAdministrator_ByTheQualityManager_IsRefused()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var admin = await site.EnterAsync("Mads Dahl", Role.Administrator);
        await site.EnterAsync("Mona Lie", Role.Administrator);
        var person = await site.ReadAsync<Person>(admin.PersonId);

        var outcome = await ChangeAsync(
            site,
            person.Id,
            Edit(person, f => f.Password = "nine warm stones in a row")
        );

        Assert.Equal("administrator:Roles", WorkingSite.Text(outcome.Refusals));
    }

    [Fact]
    public async Task Reset_SetsANewPassword_FreesTheAccount_AndEndsItsSessions()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var actor = await site.EnterAsync("Nina Vik", Role.Operator);
        var person = await site.ReadAsync<Person>(actor.PersonId);
        // From the fourth wrong password on, the account waits.
        for (var i = 0; i < 4; i++)
        {
            await site.Passwords.ForSignatureAsync(actor, "wrong", CancellationToken.None);
        }

        var before = await AccountAsync(site, person);
        Accept.All(await ChangeAsync(site, person.Id, Edit(person, f => f.Password = First)));

        var after = await AccountAsync(site, person);
        Assert.Equal(4, before.AccessFailedCount);
        Assert.NotNull(before.LockoutEnd);
        Assert.Equal((0, null), (after.AccessFailedCount, after.LockoutEnd));
        Assert.True(after.MustChangePassword);
        Assert.NotEqual(before.PasswordHash, after.PasswordHash);
        Assert.NotEqual(before.SecurityStamp, after.SecurityStamp);
        Assert.Equal(2, await site.EntriesAsync(person.Id));
    }

    private static PersonForm Form(Action<PersonForm>? edit = null)
    {
        var form = new PersonForm
        {
            PrintedName = "Nina Vik",
            SignInName = "nina",
            Roles = [Role.Operator, Role.Inspector],
            Password = First,
        };
        edit?.Invoke(form);
        return form;
    }

    private static PersonForm Edit(Person person, Action<PersonForm>? edit = null)
    {
        var form = new PersonForm
        {
            Version = person.Version,
            PrintedName = person.PrintedName,
            Roles = [.. person.Roles],
            IsActive = true,
        };
        edit?.Invoke(form);
        return form;
    }

    private static Task<Outcome> EnterAsync(WorkingSite site, Actor actor, PersonForm form) =>
        site.People.EnterAsync(form, actor, CancellationToken.None);

    private static Task<Outcome> ChangeAsync(
        WorkingSite site,
        Guid id,
        PersonForm form,
        Actor? actor = null
    ) =>
        site.People.ChangeAsync(
            id,
            form,
            actor ?? SamplePeople.QualityManager,
            CancellationToken.None
        );

    private static async Task<Person> EnteredAsync(WorkingSite site)
    {
        Accept.All(await EnterAsync(site, SamplePeople.QualityManager, Form()));
        return await PersonAsync(site, "nina");
    }

    private static Task<Person> PersonAsync(WorkingSite site, string signInName) =>
        site.Database.ReadAsync(db => db.People.SingleAsync(p => p.SignInName == signInName));

    private static Task<Account> AccountAsync(WorkingSite site, Person person) =>
        site.Database.ReadAsync(db => db.Users.SingleAsync(a => a.PersonId == person.Id));

    private static Task<int> CountAsync(WorkingSite site) =>
        site.Database.ReadAsync(db => db.People.CountAsync());
}
