using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;

namespace WeldTrace.Web.Tests.Features;

/// <summary>A site with one vessel of <see cref="SampleDesigns"/> brought along its route, and people who can sign.</summary>
internal sealed class RoutedVessel : IAsyncDisposable
{
    private RoutedVessel(WorkingSite site, SampleShop shop) => (Site, Shop) = (site, shop);

    public WorkingSite Site { get; }

    public SampleShop Shop { get; }

    public string Serial => Shop.Vessel.Serial;

    public required Actor Inspector { get; init; }

    public required Actor Quality { get; init; }

    public required Actor Engineer { get; init; }

    /// <param name="server">Database server.</param>
    /// <param name="sequence">Step that comes next: 10 and 20 weld, 30 leak, 40 pressure, 50 section, 60 acceptance.</param>
    public static async Task<RoutedVessel> AtAsync(PostgresServerFixture server, int sequence)
    {
        var site = await WorkingSite.OpenAsync(server);
        var shop = new SampleShop().Reach(sequence);
        await site.Database.AddAsync([
            shop.ToolDesign,
            shop.Design,
            shop.Lot,
            shop.Procedure,
            shop.Tool,
            shop.Machine,
            shop.Vessel,
            .. shop.Runs,
            SampleInstruments.Gauge("G-4", "10"),
            SampleInstruments.Gauge("G-7"),
            SampleInstruments.Calibrated("T-2", InstrumentKind.Temperature, "°C"),
            SampleInstruments.Caliper(),
            .. SampleCertificates.AllMethods(SamplePeople.Welders[0]),
        ]);
        site.Clock.Advance(TimeSpan.FromDays(1));
        return new RoutedVessel(site, shop)
        {
            Inspector = await EnterAsync(site, "Ines Falk", Role.Inspector),
            Quality = await EnterAsync(site, "Quentin Hale", Role.QualityManager),
            Engineer = await EnterAsync(site, "Edda Lund", Role.Engineer),
        };
    }

    // Everyone is certified, so that a refusal speaks of the role alone.
    private static async Task<Actor> EnterAsync(WorkingSite site, string name, Role role)
    {
        var person = SamplePeople.Entered(name, role);
        var actor = await site.EnterAsync(person);
        await site.Database.AddAsync([.. SampleCertificates.AllMethods(person)]);
        return actor;
    }

    /// <summary>Whoever welded the vessel, and is an inspector too.</summary>
    public async Task<Actor> WelderWhoInspectsAsync()
    {
        await Site.GiveAccountAsync(SamplePeople.Welders[0]);
        return SamplePeople.Operator with { Roles = [Role.Operator, Role.Inspector] };
    }

    public Task<Vessel> NowAsync() => Site.ReadAsync<Vessel>(Shop.Vessel.Id);

    /// <summary>The meanings under a record.</summary>
    public Task<List<string>> MeaningsAsync(Guid id) =>
        Site.Database.ReadAsync(db =>
            db.Signatures.Where(s => s.SignedId == id).Select(s => s.Meaning).ToListAsync()
        );

    /// <summary>What the check of the ledger complains of, but for the logs of the runs before: those exist as summaries only.</summary>
    public async Task<IReadOnlyList<string>> LedgerProblemsAsync() =>
        [
            .. (await Site.LedgerProblemsAsync()).Where(p =>
                !p.StartsWith("The process log of weld-run", StringComparison.Ordinal)
            ),
        ];

    public ValueTask DisposeAsync() => Site.DisposeAsync();
}
