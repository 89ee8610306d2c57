using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Ledger;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sites;
using WeldTrace.Persistence;
using WeldTrace.Persistence.PrivateServer;
using WeldTrace.Persistence.Roles;
using WeldTrace.Web.Features.Welding.ReviewSignal;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Demo;

/// <summary>Fills an empty database with the invented workshop, once; every record goes through the same rules as real ones.</summary>
public sealed class DemoData(IServiceProvider services, TimeProvider clock) : IHostedService
{
    public const string SiteName = "Halvorsen Bay Float Works";

    // Its joint is cleaned last of all.
    private const string LastPrepared = "NR10-0007";

    private static readonly TimeSpan History = TimeSpan.FromDays(40);

    public async Task StartAsync(CancellationToken cancellationToken)
    {
        await using var scope = services.CreateAsyncScope();
        var contexts = scope.ServiceProvider.GetRequiredService<
            IDbContextFactory<WeldTraceDbContext>
        >();
        await using var db = await contexts.CreateDbContextAsync(cancellationToken);
        if (await db.Sites.AsNoTracking().SingleOrDefaultAsync(cancellationToken) is { } site)
        {
            await RequireWholeAsync(db, site, cancellationToken);
            return;
        }

        var past = new DemoClock(clock.GetUtcNow(), History);
        var cast = AddPeople(db, scope.ServiceProvider.GetRequiredService<NewAccount>(), past);
        var key = services.GetRequiredService<SiteKeyFolder>().Current.PublicKey;
        db.Add(SigningKey.TakeIntoUse(key, cast.Administrator, past.AfterMinutes(0)));
        await db.SaveForDemoAsync(cancellationToken);
        var shop = await DemoWorkshop.SetUpAsync(db, cast, past, cancellationToken);
        var signals = scope.ServiceProvider.GetRequiredService<ReviewSignalReader>();
        await AddVesselsAsync(db, signals, shop, cast, past, cancellationToken);
    }

    // Whoever stops the first start half-way would look at a workshop without vessels ever after.
    private async Task RequireWholeAsync(
        WeldTraceDbContext db,
        Site site,
        CancellationToken cancellation
    )
    {
        if (
            site.IsDemonstration
            && !await db.JointCleanings.AnyAsync(c => c.VesselSerial == LastPrepared, cancellation)
        )
        {
            throw new DatabaseStartException(
                DatabaseStartProblem.DemonstrationUnfinished,
                "The demonstration was broken off while it was made",
                services.GetRequiredService<DatabaseSettings>().Folder,
                "Delete that folder and start again: all that is in it is invented."
            );
        }
    }

    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <summary>One vessel finished, the others at different stations; the last of a material that its design does not accept.</summary>
    private static async Task AddVesselsAsync(
        WeldTraceDbContext db,
        ReviewSignalReader signals,
        DemoWorkshop shop,
        DemoCast cast,
        DemoClock clock,
        CancellationToken cancellation
    )
    {
        List<DemoVessel> vessels = [];
        for (var number = 1; number <= 10; number++)
        {
            var tube = number == 10 ? shop.Material.Cheap : shop.Material.Tube;
            vessels.Add(
                await DemoVessel.PlanAsync(db, shop, cast, clock, number, tube, cancellation)
            );
        }

        await vessels[0].GoToAsync(30, cancellation);
        await vessels[0].WeldBadlyAsync(isInterrupted: false, cancellation);
        await vessels[0].SettleFindingsAsync(cancellation);
        await vessels[0].GoToAsync(int.MaxValue, cancellation);
        await new DemoLaboratory(db, shop, cast, clock).AddAsync(
            vessels[0].Vessel.ProductionLot,
            cancellation
        );
        int[] stations = [110, 90, 80, 70, 40, 20];
        foreach (var (vessel, station) in vessels.Skip(1).Zip(stations))
        {
            await vessel.GoToAsync(station, cancellation);
        }

        await vessels[7].GoToAsync(20, cancellation);
        await vessels[7].WeldBadlyAsync(isInterrupted: true, cancellation);
        await vessels[9].GoToAsync(20, cancellation);
        await DemoConcession.AskAsync(db, shop, vessels[9].Serial, cast, clock, cancellation);
        await new DemoLots(db, shop, cast, clock).AddAsync(cancellation);
        await DemoSignal.ReviewAsync(db, signals, vessels[0].Serial, cast, clock, cancellation);
        await GetReadyAsync(db, shop, [vessels[5], vessels[6]], cast, clock, cancellation);
    }

    /// <summary>This morning: tools cleaned, and the joints that are welded next cleaned and fitted up.</summary>
    private static async Task GetReadyAsync(
        WeldTraceDbContext db,
        DemoWorkshop shop,
        IReadOnlyList<DemoVessel> next,
        DemoCast cast,
        DemoClock clock,
        CancellationToken cancellation
    )
    {
        clock.GoTo(hoursBeforeNow: 1);
        shop.Tools.CleanAll(cast, clock);
        foreach (var vessel in next)
        {
            await vessel.PrepareNextAsync(cancellation);
        }

        await db.SaveForDemoAsync(cancellation);
    }

    private static DemoCast AddPeople(WeldTraceDbContext db, NewAccount accounts, DemoClock clock)
    {
        var at = clock.AfterMinutes(0);
        var administrator = Add(db, accounts, DemoPeople.Administrator, null, at);
        var others = DemoPeople
            .All.Where(p => p != DemoPeople.Administrator)
            .ToDictionary(p => p, p => Add(db, accounts, p, administrator.AsActor(), at).AsActor());
        db.Add(
            Site.SetUp(
                    SiteName,
                    "Europe/Oslo",
                    UnitSystem.Metric,
                    true,
                    administrator.AsActor(),
                    at
                )
                .Must()
        );
        db.AddRange(ShippedLimits.Missing([], administrator.AsActor(), at));
        return new DemoCast(
            others[DemoPeople.Engineer],
            others[DemoPeople.Operator],
            others[DemoPeople.Inspector],
            others[DemoPeople.QualityManager],
            administrator.AsActor()
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
        var person = Person.Enter(demo.PrintedName, demo.SignInName, demo.Roles, by, at).Must();
        db.AddRange(person, accounts.For(person, DemoPeople.Password, mustChangePassword: false));
        return person;
    }
}
