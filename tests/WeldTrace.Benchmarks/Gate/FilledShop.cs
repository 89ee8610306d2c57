using Npgsql;
using WeldTrace.Domain.Material;
using WeldTrace.Persistence;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;

namespace WeldTrace.Benchmarks.Gate;

/// <summary>
/// A database of 100,000 vessels and five years of 20,000 runs each: records made by the domain for one vessel, and then copied row by
/// row in the database, each with an id of its own.
/// </summary>
internal sealed class FilledShop : IAsyncDisposable
{
    public const int Vessels = 100_000;
    public const int Runs = 100_000;
    private const int Lots = 2_000;
    private const int HeatTreatments = 5_000;
    private const int Findings = 10_000;

    private readonly PostgresServerFixture _server = new();
    private TestDatabase _database = null!;

    /// <summary>The vessel whose gate is judged: one pass is welded, the second comes next.</summary>
    public SampleShop Shop { get; } = new SampleShop().Reach(20);

    public static async Task<FilledShop> OpenAsync()
    {
        FilledShop filled = new();
        await filled._server.InitializeAsync();
        filled._database = await filled._server.CreateWeldTraceDatabaseAsync();
        await filled.AddSamplesAsync();
        await filled.CopyAsync();
        return filled;
    }

    public WeldTraceDbContext Open() => WeldTraceDatabases.Open(_database.Connections.Application);

    public async ValueTask DisposeAsync()
    {
        await _database.DisposeAsync();
        await _server.DisposeAsync();
    }

    private async Task AddSamplesAsync()
    {
        await using var db = Open();
        var shop = Shop;
        shop.Report(10);
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
            SampleHeat.Entered(
                "180",
                [new TreatedPart(shop.Vessel.Id, shop.Vessel.Serial, IsVessel: true)]
            ),
        ]);
        Accept.All(await db.SaveAsync(CancellationToken.None));
    }

    private async Task CopyAsync()
    {
        await using var connection = new NpgsqlConnection(_database.Connections.Owner);
        await connection.OpenAsync();
        foreach (var statement in Statements())
        {
            await using var command = new NpgsqlCommand(statement, connection)
            {
                CommandTimeout = 0,
            };
            await command.ExecuteNonQueryAsync();
        }
    }

    private static IEnumerable<string> Statements() =>
        [
            FormattableString.Invariant(
                $"CREATE TABLE filled AS SELECT n, gen_random_uuid() AS id FROM generate_series(1, {Vessels}) n"
            ),
            "ALTER TABLE filled ADD PRIMARY KEY (n)",
            Copies("material_lots", Lots, "'number', 'LOT-' || n"),
            Copies(
                "vessels",
                Vessels,
                "'id', (SELECT f.id FROM filled f WHERE f.n = s.n), 'serial', 'NR9-' || n"
            ),
            Copies("weld_runs", Runs, "'vessel_id', (SELECT f.id FROM filled f WHERE f.n = s.n)"),
            Copies(
                "heat_treatments",
                HeatTreatments,
                "'number', 'HT-' || n, 'parts', jsonb_build_array(jsonb_build_object('id', gen_random_uuid()))"
            ),
            Copies(
                "findings",
                Findings,
                "'number', 1000 + n, 'vessel_id', (SELECT f.id FROM filled f WHERE f.n = s.n)"
            ),
            "ANALYZE",
        ];

    /// <summary>Copies of the first row of a table with some columns changed.</summary>
    private static string Copies(string table, int count, string changes) =>
        FormattableString.Invariant(
            $"""
            INSERT INTO {table}
            SELECT made.*
            FROM (SELECT t AS row FROM {table} t LIMIT 1) first
            CROSS JOIN generate_series(1, {count}) s (n)
            CROSS JOIN jsonb_populate_record(first.row, jsonb_build_object('id', gen_random_uuid()) || jsonb_build_object({changes})) made
            """
        );
}
