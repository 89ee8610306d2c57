using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;
using WeldTrace.Benchmarks.Pages;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Roles;
using WeldTrace.TestSupport.Filling;

namespace WeldTrace.Benchmarks.Million;

/// <summary>
/// The demonstration, filled with copies of one vessel and its 35 rows, over five years: a tool and a lot of material for 1,000 of them, 20
/// welders, 40 instruments. A tenth is in work, a third was shipped. The long details of runs are shortened, except in those that are asked about.
/// </summary>
internal sealed class MillionShop(int count) : IAsyncDisposable
{
    private const string Template = "NR10-0001";
    private const string InWork = "NR10-0002";
    private const int Asked = 60;

    // Rows of which not one stands beside another of its vessel: some hundred are in work at once.
    private const int Between = 40;

    private readonly DemoSite _site = DemoSite.Start();
    private readonly Filling _plain = new(Template, count);

    /// <summary>The vessels whose history is asked; their runs are whole.</summary>
    public IReadOnlyList<string> Serials { get; } =
    [
        .. Enumerable
            .Range(1, Asked)
            .Select(i => new Filling(Template, count).SerialOf((long)count * i / (Asked + 1))),
    ];

    public DemoSite Site => _site;

    public string Owner => Connections.Owner;

    private DatabaseConnections Connections =>
        _site.Services.GetRequiredService<IDatabaseConnections>().Current;

    /// <summary>A serial from anywhere among the copies.</summary>
    /// <param name="share">From 0 to 1, in the order of time.</param>
    public string SerialAt(double share) => _plain.SerialOf((long)((count - 1) * share));

    /// <summary>Days in which so many vessels were made.</summary>
    public int DaysOf(int vessels) => (int)Math.Ceiling(vessels * _plain.Span.TotalDays / count);

    public async Task<long> FillAsync()
    {
        using var client = _site.CreateClient();
        await ExecuteAsync(
            $"""
            ALTER SYSTEM SET fsync = off;
            SELECT pg_reload_conf();
            CREATE TABLE whole_runs AS SELECT step_sequence, gate, log FROM weld_runs WHERE vessel_serial = '{Template}';
            ALTER TABLE weld_runs DISABLE TRIGGER USER;
            UPDATE weld_runs SET gate = jsonb_path_query_array(gate, '$[0 to 1]'), log = log - 'phaseFigures' - 'places' - 'parameters'
            WHERE vessel_serial = '{Template}';
            """
        );
        var written = await ManyVessels.AddAsync(
            Owner,
            _plain with
            {
                Between = Between,
                Shared = await AskAsync(SharedAsync),
                Then = [Whole, InWorkNow, Shipped],
            }
        );
        await ExecuteAsync("ALTER SYSTEM RESET fsync; SELECT pg_reload_conf(); CHECKPOINT");
        return written;
    }

    public async Task<T> AskAsync<T>(Func<WeldTraceDbContext, Task<T>> ask)
    {
        await using var scope = _site.Services.CreateAsyncScope();
        var contexts = scope.ServiceProvider.GetRequiredService<
            IDbContextFactory<WeldTraceDbContext>
        >();
        await using var db = await contexts.CreateDbContextAsync();
        return await ask(db);
    }

    /// <summary>A connection of the application's role, for statements written by hand.</summary>
    public async Task<NpgsqlConnection> OpenAsync()
    {
        NpgsqlConnection connection = new(
            new NpgsqlConnectionStringBuilder(Connections.Application)
            {
                // As the application's own, see ContextOptions.
                Options = "-c jit=off",
            }.ConnectionString
        );
        await connection.OpenAsync();
        return connection;
    }

    public ValueTask DisposeAsync() => _site.DisposeAsync();

    private string Whole =>
        $"""
            UPDATE weld_runs r SET gate = w.gate, log = w.log FROM whole_runs w
            WHERE w.step_sequence = r.step_sequence
                AND r.vessel_serial IN ('{Template}', {string.Join(
                ", ",
                Serials.Select(s => $"'{s}'")
            )})
            """;

    // The example is looked up once and not for each copy: no index is there yet.
    private static string InWorkNow =>
        $"""
            UPDATE vessels SET (state, steps) = (SELECT w.state, w.steps FROM vessels w WHERE w.serial = '{InWork}')
            WHERE serial LIKE 'M%5'
            """;

    private static string Shipped =>
        $$"""
            UPDATE vessels SET state = 'Shipped', version = version + 1,
                shipment = jsonb_build_object('consignee', 'Institute ' || right(serial, 3), 'papers', 'DN-' || serial)
            WHERE serial SIMILAR TO 'M%(1|4|7)'
            """;

    private static async Task<IReadOnlyList<SharedRecord>> SharedAsync(WeldTraceDbContext db)
    {
        var vessel = await db.Vessels.SingleAsync(v => v.Serial == Template);
        var runs = await db.WeldRuns.Where(r => r.VesselId == vessel.Id).ToListAsync();
        var tests = await db.LeakTests.Where(t => t.VesselId == vessel.Id).ToListAsync();
        Guid[] welders = [.. runs.Select(r => r.OperatorId).Distinct()];
        var certificates = await db
            .Certificates.Where(c => welders.Contains(c.PersonId))
            .Select(c => c.Id)
            .ToListAsync();
        return
        [
            .. runs.Select(r => r.ToolId)
                .Distinct()
                .Select(id => SharedRecord.ChangesEvery(id, 1000) with { Table = "tools" }),
            .. vessel
                .Components.Select(c => c.MaterialLotId)
                .Distinct()
                .Select(id => SharedRecord.ChangesEvery(id, 1000) with { Table = "material_lots" }),
            .. welders.Select(id => SharedRecord.OneOf(id, 20)),
            .. certificates.Select(id =>
                SharedRecord.OneOf(id, 20) with
                {
                    Table = "certificates",
                }
            ),
            .. tests
                .SelectMany(t => t.Instruments ?? [])
                .Select(i => i.Id)
                .Distinct()
                .Select(id => SharedRecord.OneOf(id, 40) with { Table = "instruments" }),
        ];
    }

    private async Task ExecuteAsync(string statements)
    {
        await using NpgsqlConnection connection = new(Owner);
        await connection.OpenAsync();
        // Each for itself: the server's settings can't be changed in a transaction.
        foreach (var statement in statements.Split(';', StringSplitOptions.RemoveEmptyEntries))
        {
            await using NpgsqlCommand command = new(statement, connection) { CommandTimeout = 0 };
            await command.ExecuteNonQueryAsync();
        }
    }
}
