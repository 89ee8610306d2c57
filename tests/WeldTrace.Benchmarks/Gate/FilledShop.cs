using WeldTrace.Domain.Material;
using WeldTrace.Domain.ProductionTesting;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Persistence;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Filling;
using WeldTrace.TestSupport.Records;

namespace WeldTrace.Benchmarks.Gate;

/// <summary>
/// A database of 100,000 vessels and five years of 20,000 runs each: records made by the domain for one vessel, and then copied with ids
/// of their own. A tool lasts for 100 vessels, a lot of material for 50, and 20 are heat-treated together.
/// </summary>
internal sealed class FilledShop : IAsyncDisposable
{
    public const int Vessels = 100_000;

    private readonly PostgresServerFixture _server = new();
    private TestDatabase _database = null!;

    private static readonly ProductionTestRule DailyTests = new(
        Length.FromMetres(100),
        24,
        true,
        true,
        true,
        true,
        "visual, bends, macro",
        "Class rules Ch. 13 9.2.3"
    );

    /// <summary>The vessel whose gate is judged: one pass is welded, the second comes next.</summary>
    public SampleShop Shop { get; } =
        new SampleShop(design: SampleDesigns.Content() with { ProductionTests = DailyTests }).Reach(
            20
        );

    public static async Task<FilledShop> OpenAsync()
    {
        FilledShop filled = new();
        await filled._server.InitializeAsync();
        filled._database = await filled._server.CreateWeldTraceDatabaseAsync();
        await filled.FillAsync();
        return filled;
    }

    public WeldTraceDbContext Open() => WeldTraceDatabases.Open(_database.Connections.Application);

    public async ValueTask DisposeAsync()
    {
        await _database.DisposeAsync();
        await _server.DisposeAsync();
    }

    private async Task FillAsync()
    {
        var shop = Shop;
        shop.Report(10);
        var heat = SampleHeat.Entered(
            "180",
            [new TreatedPart(shop.Vessel.Id, shop.Vessel.Serial, IsVessel: true)]
        );
        await using var db = Open();
        db.AddRange([
            SamplePapers.Certificate(),
            shop.ToolDesign,
            shop.Design,
            shop.Lot,
            shop.Procedure,
            shop.Tool,
            shop.Machine,
            shop.Vessel,
            .. shop.Runs,
            .. shop.Findings,
            .. shop.Certificates,
            heat,
            Accept.Value(
                ProductionTest.Record(
                    "PT-1",
                    shop.Machine,
                    shop.Procedure,
                    shop.Tool,
                    "Visual without finding.",
                    true,
                    SampleTests.Examiner,
                    SamplePeople.Inspector,
                    SampleTime.Start.AddDays(-1)
                )
            ),
        ]);
        Accept.All(await db.SaveAsync(CancellationToken.None));
        await ManyVessels.AddAsync(
            _database.Connections.Owner,
            new Filling(shop.Vessel.Serial, Vessels)
            {
                Shared =
                [
                    SharedRecord.ChangesEvery(shop.Tool.Id, 100) with
                    {
                        Table = "tools",
                    },
                    SharedRecord.ChangesEvery(shop.Lot.Id, 50) with
                    {
                        Table = "material_lots",
                    },
                    SharedRecord.ChangesEvery(heat.Id, 20) with
                    {
                        Table = "heat_treatments",
                    },
                ],
            }
        );
    }
}
