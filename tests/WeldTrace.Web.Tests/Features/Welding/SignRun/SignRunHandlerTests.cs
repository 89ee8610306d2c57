using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;
using WeldTrace.Persistence;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Welding.SignRun;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Tests.Features.Welding.SignRun;

public sealed class SignRunHandlerTests(PostgresServerFixture server)
{
    private const string Password = "seven quiet anchors";

    [Fact]
    public async Task HandleAsync_RightPassword_SignsSealsAndPassesTheStep()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var (id, signer) = await LoggedAsync(shop);

        var outcome = await SignAsync(shop, id, signer, Password);

        Assert.Empty(outcome.Refusals);
        var run = await shop.RunAsync(id);
        Assert.True(run.IsSealed);
        Assert.Equal(StepState.Passed, (await shop.VesselNowAsync()).Step(10)!.State);
        var signature = await shop.Database.ReadAsync(db => db.Signatures.SingleAsync());
        Assert.Equal("I welded this run as recorded here.", signature.Meaning);
        Assert.Equal((id, run.Version), (signature.SignedId, signature.SignedVersion));
        Assert.Equal(
            1,
            await shop.Database.ReadAsync(db =>
                db.LedgerEntries.CountAsync(e => e.RecordId == signature.Id)
            )
        );
    }

    [Fact]
    public async Task HandleAsync_WrongPassword_NothingSigned()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var (id, signer) = await LoggedAsync(shop);

        var outcome = await SignAsync(shop, id, signer, "seven quiet ankers");

        Assert.Equal(nameof(SignRunForm.Password), Assert.Single(outcome.Refusals).Field);
        Assert.False((await shop.RunAsync(id)).IsSealed);
        Assert.Equal(0, await shop.Database.ReadAsync(db => db.Signatures.CountAsync()));
    }

    [Fact]
    public async Task HandleAsync_NoLogYet_Refused()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var signer = await EnterAsync(shop);
        var form = shop.StartForm();
        Accept.All(await shop.StartAsync(form, signer));
        await EndAsync(shop, form.Id, signer);

        var outcome = await SignAsync(shop, form.Id, signer, Password);

        Assert.Equal("log", Assert.Single(outcome.Refusals).Code);
    }

    [Fact]
    public async Task HandleAsync_SomebodyElse_Refused()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var signer = await EnterAsync(shop);
        var id = await shop.EndedAsync();
        Assert.True((await shop.BringAsync(id, SampleLogs.Good())).IsAccepted);

        var outcome = await SignAsync(shop, id, signer, Password);

        Assert.Equal("operator", Assert.Single(outcome.Refusals).Code);
        Assert.False((await shop.RunAsync(id)).IsSealed);
    }

    private static async Task<(Guid Id, Actor Signer)> LoggedAsync(WeldShop shop)
    {
        var signer = await EnterAsync(shop);
        var form = shop.StartForm();
        Accept.All(await shop.StartAsync(form, signer));
        await EndAsync(shop, form.Id, signer);
        Assert.True((await shop.BringAsync(form.Id, SampleLogs.Good())).IsAccepted);
        return (form.Id, signer);
    }

    private static async Task EndAsync(WeldShop shop, Guid id, Actor signer) =>
        Accept.All(
            await new WeldTrace.Web.Features.Welding.EndRun.EndRunHandler(
                shop.Database,
                shop.Clock
            ).HandleAsync(id, new(), signer, CancellationToken.None)
        );

    private static async Task<Actor> EnterAsync(WeldShop shop)
    {
        await using var services = Services(shop);
        await using var scope = services.CreateAsyncScope();
        var person = Accept.Value(
            WeldTrace.Domain.People.Person.Enter(
                "Hedda Vik",
                "hedda",
                [WeldTrace.Domain.People.Role.Operator],
                null,
                shop.Clock.GetUtcNow()
            )
        );
        var accounts = scope.ServiceProvider.GetRequiredService<NewAccount>();
        await shop.Database.AddAsync(
            person,
            accounts.For(person, Password, mustChangePassword: false),
            SampleCertificates.Welder(person)
        );
        return person.AsActor();
    }

    private static async Task<Outcome> SignAsync(
        WeldShop shop,
        Guid id,
        Actor actor,
        string password
    )
    {
        await using var services = Services(shop);
        await using var scope = services.CreateAsyncScope();
        return await new SignRunHandler(
            shop.Database,
            scope.ServiceProvider.GetRequiredService<PasswordCheck>(),
            shop.Clock
        ).HandleAsync(id, new SignRunForm { Password = password }, actor, CancellationToken.None);
    }

    private static ServiceProvider Services(WeldShop shop) =>
        new ServiceCollection()
            .AddLogging()
            .AddSingleton<TimeProvider>(shop.Clock)
            .AddDbContextFactory<WeldTraceDbContext>(options =>
                options.UseWeldTrace(shop.Database.ConnectionString)
            )
            .AddSecurity(shop.Configuration)
            .AddScoped<ISigningSession, NamedAlready>()
            .BuildServiceProvider();
}
