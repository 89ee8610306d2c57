namespace WeldTrace.Benchmarks.Pages;

/// <summary>
/// Many vessels of the past beside those of the demonstration, as copies of its finished one: five years, 50 vessels of a lot of
/// material, 100 of a tool, two runs and a leak test each. They are rows only; nothing of them stands in the ledger.
/// </summary>
internal static class ManyVessels
{
    /// <summary>Serial of one from the middle.</summary>
    public const string Middle = "MV-050000";

    private const string Sql = """
        CREATE FUNCTION pg_temp.made(kind text, n bigint) RETURNS uuid LANGUAGE sql IMMUTABLE AS $$ SELECT md5(kind || n)::uuid $$;

        INSERT INTO vessels SELECT (jsonb_populate_record(v, jsonb_build_object(
            'id', pg_temp.made('vessel', n), 'serial', 'MV-' || lpad(n::text, 6, '0'), 'lot_id', null,
            'components', jsonb_build_array(jsonb_build_object('name', 'shell', 'serial', 'S' || n, 'materialLotNumber', 'ML' || n / 50,
                'castNumber', 'C', 'materialLotId', pg_temp.made('lot', n / 50)))))).*
        FROM vessels v, generate_series(1, {0}::bigint) n WHERE v.serial = 'NR10-0001';

        INSERT INTO weld_runs SELECT (jsonb_populate_record(r, jsonb_build_object(
            'id', pg_temp.made('run', 2 * n + pass), 'vessel_id', pg_temp.made('vessel', n), 'pass_number', pass, 'gate', '[]'::jsonb,
            'log', null, 'checks', null, 'tool_id', pg_temp.made('tool', n / 100), 'machine_id', pg_temp.made('machine', n % 5),
            'operator_id', pg_temp.made('operator', n % 20), 'procedure_revision_id', pg_temp.made('procedure', n / 5000),
            'started_at', timestamptz '2021-01-04' + n * 1825.0 / {0} * interval '1 day'))).*
        FROM (SELECT r.* FROM weld_runs r JOIN vessels v ON v.id = r.vessel_id WHERE v.serial = 'NR10-0001' LIMIT 1) r,
            generate_series(1, {0}::bigint) n, generate_series(1, 2) pass;

        INSERT INTO leak_tests SELECT (jsonb_populate_record(t, jsonb_build_object(
            'id', pg_temp.made('leak', n), 'vessel_id', pg_temp.made('vessel', n),
            'tested_at', timestamptz '2021-01-05' + n * 1825.0 / {0} * interval '1 day',
            'instruments', jsonb_build_array(jsonb_build_object('id', pg_temp.made('gauge', n % 40), 'mark', 'G'))))).*
        FROM (SELECT t.* FROM leak_tests t JOIN vessels v ON v.id = t.vessel_id WHERE v.serial = 'NR10-0001' LIMIT 1) t,
            generate_series(1, {0}::bigint) n;

        ANALYZE vessels, weld_runs, leak_tests;
        """;

    /// <param name="owner">Connection of the database's owner: the application may not write past its ledger.</param>
    /// <param name="count">How many.</param>
    public static async Task AddAsync(string owner, int count)
    {
        await using var connection = new Npgsql.NpgsqlConnection(owner);
        await connection.OpenAsync();
        await using var command = new Npgsql.NpgsqlCommand(
            Sql.Replace(
                "{0}",
                count.ToString(System.Globalization.CultureInfo.InvariantCulture),
                StringComparison.Ordinal
            ),
            connection
        )
        {
            CommandTimeout = 600,
        };
        await command.ExecuteNonQueryAsync();
    }
}
