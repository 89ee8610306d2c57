using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sites;
using WeldTrace.Persistence;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Demo;

/// <summary>Fills an empty database with the invented workshop, once.</summary>
public sealed class DemoData(IServiceProvider services, TimeProvider clock) : IHostedService
{
    public async Task StartAsync(CancellationToken cancellationToken)
    {
        await using var scope = services.CreateAsyncScope();
        var contexts = scope.ServiceProvider.GetRequiredService<
            IDbContextFactory<WeldTraceDbContext>
        >();
        await using var db = await contexts.CreateDbContextAsync(cancellationToken);
        if (!await db.Sites.AnyAsync(cancellationToken))
        {
            AddPeople(db, scope.ServiceProvider.GetRequiredService<NewAccount>());
            Require(await db.SaveAsync(cancellationToken));
        }
    }

    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    private void AddPeople(WeldTraceDbContext db, NewAccount accounts)
    {
        var at = clock.GetUtcNow();
        var administrator = Add(db, accounts, DemoPeople.Administrator, null, at);
        foreach (var person in DemoPeople.All.Where(p => p != DemoPeople.Administrator))
        {
            Add(db, accounts, person, administrator.AsActor(), at);
        }

        db.Add(
            Require(
                Site.SetUp(
                    "Halvorsen Bay Float Works",
                    "Europe/Oslo",
                    UnitSystem.Metric,
                    true,
                    administrator.AsActor(),
                    at
                )
            )
        );
    }

    private static Person Add(
        WeldTraceDbContext db,
        NewAccount accounts,
        DemoPerson demo,
        Actor? by,
        DateTimeOffset at
    )
    {
        var person = Require(Person.Enter(demo.PrintedName, demo.SignInName, demo.Roles, by, at));
        db.AddRange(person, accounts.For(person, DemoPeople.Password, mustChangePassword: false));
        return person;
    }

    private static T Require<T>(Outcome<T> outcome)
        where T : class =>
        outcome.Value
        ?? throw new InvalidOperationException(
            string.Join(" ", outcome.Refusals.Select(r => r.Sentence))
        );

    private static void Require(Outcome outcome)
    {
        if (!outcome.IsAccepted)
        {
            throw new InvalidOperationException(
                string.Join(" ", outcome.Refusals.Select(r => r.Sentence))
            );
        }
    }
}
