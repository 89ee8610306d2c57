using System.Text.Json;
using Npgsql;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;

namespace WeldTrace.Benchmarks.Million;

/// <summary>
/// The history of a vessel by statements written by hand, in two round trips. Each column becomes the value that the record has: details in
/// JSON are read into the same types.
/// </summary>
internal sealed class HistoryByHand
{
    private static readonly (string Table, string Sql)[] Statements =
    [
        ("vessel_designs", "SELECT * FROM vessel_designs WHERE id = $2"),
        ("production_lots", "SELECT * FROM production_lots WHERE id = $3"),
        ("weld_runs", "SELECT * FROM weld_runs WHERE vessel_id = $1 ORDER BY started_at"),
        ("leak_tests", "SELECT * FROM leak_tests WHERE vessel_id = $1 ORDER BY tested_at"),
        ("pressure_tests", "SELECT * FROM pressure_tests WHERE vessel_id = $1 ORDER BY tested_at"),
        ("sections", "SELECT * FROM sections WHERE vessel_id = $1 ORDER BY tested_at"),
        (
            "laboratory_tests",
            "SELECT * FROM laboratory_tests WHERE vessel_id = $1 OR vessel_id IS NULL AND production_lot = $4 ORDER BY id"
        ),
        ("step_sign_offs", "SELECT * FROM step_sign_offs WHERE vessel_id = $1 ORDER BY at"),
        ("findings", "SELECT * FROM findings WHERE vessel_id = $1 ORDER BY number"),
        (
            "signatures",
            "SELECT * FROM signatures WHERE vessels @> jsonb_build_array($1) ORDER BY at"
        ),
        ("concessions", "SELECT * FROM concessions WHERE vessel_id = $1 ORDER BY id"),
        ("signal_reviews", "SELECT * FROM signal_reviews WHERE vessel_id = $1 ORDER BY at"),
        ("vessel_archives", "SELECT * FROM vessel_archives WHERE vessel_id = $1 ORDER BY at"),
        ("material_lots", "SELECT * FROM material_lots WHERE id = ANY ($5) ORDER BY number"),
        ("components", "SELECT * FROM components WHERE id = ANY ($6) ORDER BY serial"),
        (
            "heat_treatments",
            "SELECT * FROM heat_treatments WHERE parts @> ANY ($7::jsonb[]) ORDER BY number"
        ),
        (
            "joint_cleanings",
            "SELECT * FROM joint_cleanings WHERE vessel_id = $1 ORDER BY cleaned_at"
        ),
        ("joint_fit_ups", "SELECT * FROM joint_fit_ups WHERE vessel_id = $1 ORDER BY measured_at"),
        ("sites", "SELECT * FROM sites"),
    ];

    private readonly Dictionary<string, RowShape> _shapes;

    public HistoryByHand(WeldTraceDbContext db) =>
        _shapes = Statements
            .Select(s => s.Table)
            .Append("vessels")
            .ToDictionary(t => t, t => RowShape.Of(db, t));

    /// <summary>The rows of each table, in the order of the statements.</summary>
    public async Task<IReadOnlyList<object?[]>> ReadAsync(
        NpgsqlConnection connection,
        string serial
    )
    {
        List<object?[]> rows = [];
        await using NpgsqlCommand command = new(
            "SELECT * FROM vessels WHERE serial = $1",
            connection
        )
        {
            Parameters = { new() { Value = serial } },
        };
        await using (var reader = await command.ExecuteReaderAsync())
        {
            await ReadAsync(reader, _shapes["vessels"], rows);
        }

        await using NpgsqlBatch batch = new(connection);
        var vessel = _shapes["vessels"];
        var components =
            (IReadOnlyList<Component>)vessel.ValueOf(rows[0], nameof(Vessel.Components))!;
        var id = (Guid)vessel.ValueOf(rows[0], nameof(Vessel.Id))!;
        object[] values =
        [
            id,
            vessel.ValueOf(rows[0], nameof(Vessel.DesignId))!,
            vessel.ValueOf(rows[0], nameof(Vessel.LotId)) ?? Guid.Empty,
            vessel.ValueOf(rows[0], nameof(Vessel.ProductionLot))!,
            components.Select(c => c.MaterialLotId).ToArray(),
            components
                .Where(c => c.ComponentId is not null)
                .Select(c => c.ComponentId!.Value)
                .ToArray(),
            components
                .Select(c => c.ComponentId)
                .Append(id)
                .Where(part => part is not null)
                .Select(part => $$"""[{"id":"{{part}}"}]""")
                .ToArray(),
        ];
        foreach (var (_, sql) in Statements)
        {
            batch.BatchCommands.Add(CommandOf(sql, values));
        }

        await using var answers = await batch.ExecuteReaderAsync();
        foreach (var (table, _) in Statements)
        {
            await ReadAsync(answers, _shapes[table], rows);
            await answers.NextResultAsync();
        }

        return rows;
    }

    /// <summary>The same rows out of what the application loaded.</summary>
    public IReadOnlyList<object?[]> RowsOf(VesselHistory history)
    {
        (string Table, IEnumerable<Record> Records)[] parts =
        [
            ("vessels", [history.Vessel]),
            ("vessel_designs", [history.Design]),
            ("production_lots", history.Lot is { } lot ? [lot] : []),
            ("weld_runs", history.Runs),
            ("leak_tests", history.LeakTests),
            ("pressure_tests", history.PressureTests),
            ("sections", history.Sections),
            ("laboratory_tests", history.Laboratory),
            ("step_sign_offs", history.SignOffs),
            ("findings", history.Findings),
            ("signatures", history.Signatures),
            ("concessions", history.Concessions),
            ("signal_reviews", history.SignalReviews),
            ("vessel_archives", history.Archives),
            ("material_lots", history.Material.Lots),
            ("components", history.Material.Components),
            ("heat_treatments", history.Material.HeatTreatments),
            ("joint_cleanings", history.Material.Preparation.Cleanings),
            ("joint_fit_ups", history.Material.Preparation.FitUps),
            ("sites", history.Material.Site is { } site ? [site] : []),
        ];
        return [.. parts.SelectMany(p => p.Records.Select(_shapes[p.Table].RowOf))];
    }

    /// <summary>Refuses rows that differ in any value.</summary>
    public static void RequireSame(
        IReadOnlyList<object?[]> byHand,
        IReadOnlyList<object?[]> loaded,
        string serial
    )
    {
        string[] one = [.. byHand.Select(Text)];
        string[] other = [.. loaded.Select(Text)];
        if (!one.SequenceEqual(other))
        {
            var at = one.Zip(other).TakeWhile(p => p.First == p.Second).Count();
            throw new InvalidOperationException(
                $"{serial}: {one.Length} rows by hand, {other.Length} loaded; the first that differs is {one.ElementAtOrDefault(at)} and {other.ElementAtOrDefault(at)}."
            );
        }
    }

    private static string Text(object?[] row) => JsonSerializer.Serialize(row, DomainJson.Options);

    private static async Task ReadAsync(
        NpgsqlDataReader reader,
        RowShape shape,
        List<object?[]> rows
    )
    {
        while (await reader.ReadAsync())
        {
            rows.Add(shape.Read(reader));
        }
    }

    // A statement is given the values up to the last that it names: the numbers may have no gap, so each is given all before it.
    private static NpgsqlBatchCommand CommandOf(string sql, object[] values)
    {
        var numbers = Enumerable
            .Range(1, values.Length)
            .Where(n => sql.Contains($"${n}", StringComparison.Ordinal))
            .ToList();
        for (var i = 0; i < numbers.Count; i++)
        {
            sql = sql.Replace($"${numbers[i]}", $"${i + 1}", StringComparison.Ordinal);
        }

        NpgsqlBatchCommand command = new(sql);
        numbers.ForEach(n => command.Parameters.Add(new() { Value = values[n - 1] }));
        return command;
    }
}
