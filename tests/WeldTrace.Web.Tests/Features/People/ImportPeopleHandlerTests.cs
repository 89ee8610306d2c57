using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.People;
using WeldTrace.Web.Importing;

namespace WeldTrace.Web.Tests.Features.People;

public sealed class ImportPeopleHandlerTests(PostgresServerFixture server)
{
    private const string Good = """
        printed name;sign-in name;roles
        Nina Vik;nina;operator / inspector
        Odd Lie;odd;Auditor
        """;

    [Fact]
    public async Task HandleAsync_Looking_EntersNothing()
    {
        await using var site = await WorkingSite.OpenAsync(server);

        var looked = await ImportAsync(site, Good, isConfirmed: false);

        Assert.True(looked.IsClean);
        Assert.Equal(
            ["nina: Nina Vik, operator and inspector", "odd: Odd Lie, auditor"],
            looked.Lines.Select(l => $"{l.Name}: {l.What}")
        );
        Assert.Equal(0, await site.Database.ReadAsync(db => db.People.CountAsync()));
        Assert.Equal(0, await site.Database.ReadAsync(db => db.Users.CountAsync()));
    }

    [Fact]
    public async Task HandleAsync_Confirmed_EntersEachWithAnAccountThatHasNoPassword()
    {
        await using var site = await WorkingSite.OpenAsync(server);

        var done = await ImportAsync(site, Good, isConfirmed: true);

        Assert.True(done.IsDone);
        var people = await site.Database.ReadAsync(db =>
            db.People.OrderBy(p => p.SignInName).ToListAsync()
        );
        Assert.Equal([Role.Operator, Role.Inspector], people[0].Roles);
        var accounts = await site.Database.ReadAsync(db => db.Users.ToListAsync());
        Assert.Equal(people.Select(p => p.Id).Order(), accounts.Select(a => a.PersonId).Order());
        Assert.All(accounts, a => Assert.Null(a.PasswordHash));
        Assert.All(accounts, a => Assert.True(a.MustChangePassword));
        Assert.Empty(await site.LedgerProblemsAsync());
    }

    [Theory]
    [InlineData("")]
    [InlineData("anything at all")]
    public async Task ImportedAccount_TakesNoPassword_UntilOneIsSet(string password)
    {
        await using var site = await WorkingSite.OpenAsync(server);
        await ImportAsync(site, Good, isConfirmed: true);
        var person = await site.Database.ReadAsync(db =>
            db.People.SingleAsync(p => p.SignInName == "nina")
        );

        Assert.False(await TakesAsync(site, person, password));
        Accept.All(
            await site.People.ChangeAsync(
                person.Id,
                new PersonForm
                {
                    PrintedName = person.PrintedName,
                    Roles = [.. person.Roles],
                    IsActive = true,
                    Password = WorkingSite.Password,
                },
                SamplePeople.QualityManager,
                CancellationToken.None
            )
        );
        Assert.True(await TakesAsync(site, person, WorkingSite.Password));
    }

    [Fact]
    public async Task HandleAsync_ManyFaults_TellsEachLineAndEntersNothing()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        await site.EnterAsync(SamplePeople.Entered("Tor Berg", Role.Auditor));
        var taken = await site.Database.ReadAsync(db => db.People.SingleAsync());

        var refused = await ImportAsync(
            site,
            $"""
            printed name,sign-in name,roles
            Nina Vik,nina,operator
            Nora Vik,nina,operator
            Tor Berg,{taken.SignInName},auditor
            ,,welder
            Ada Moe,ada,
            Eva Moe,eva,administrator
            """,
            isConfirmed: true
        );

        Assert.False(refused.IsDone);
        string[] expected =
        [
            "Line 3: 'nina' stands on line 2 already",
            $"Line 4: '{taken.SignInName}' is entered already",
            "Line 5: 'welder' is no role",
            "Line 5: Give the printed name",
            "Line 5: Give a sign-in name",
            "Line 6: ",
            "Line 7: Only an administrator",
        ];
        Assert.Equal(expected.Length, refused.Problems.Count);
        Assert.All(
            expected.Zip(refused.Problems),
            pair => Assert.StartsWith(pair.First, pair.Second.Sentence, StringComparison.Ordinal)
        );
        Assert.Equal(1, await site.Database.ReadAsync(db => db.People.CountAsync()));
    }

    [Fact]
    public async Task HandleAsync_ByAnEngineer_IsRefusedOnEachLine()
    {
        await using var site = await WorkingSite.OpenAsync(server);

        var refused = await ImportAsync(site, Good, isConfirmed: true, SamplePeople.Engineer);

        Assert.Equal(["role", "role"], refused.Problems.Select(p => p.Code));
        Assert.Equal(0, await site.Database.ReadAsync(db => db.People.CountAsync()));
    }

    private static async Task<bool> TakesAsync(WorkingSite site, Person person, string password)
    {
        var account = await site.Database.ReadAsync(db =>
            db.Users.SingleAsync(a => a.PersonId == person.Id)
        );
        return (await site.Passwords.CheckAsync(account, password, "Wrong.")).IsAccepted;
    }

    private static Task<ImportResult> ImportAsync(
        WorkingSite site,
        string text,
        bool isConfirmed,
        Actor? actor = null
    ) =>
        site.ImportPeople.HandleAsync(
            text,
            isConfirmed,
            actor ?? SamplePeople.QualityManager,
            CancellationToken.None
        );
}
