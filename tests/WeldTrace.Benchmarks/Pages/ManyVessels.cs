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

        INSERT INTO vessels SELECT made.*
        FROM (SELECT to_jsonb(v) AS row FROM vessels v WHERE serial = 'NR10-0001') one, generate_series(1, {0}::bigint) n,
            LATERAL jsonb_populate_record(NULL::vessels, one.row || jsonb_build_object(
                'id', pg_temp.made('vessel', n), 'serial', 'MV-' || lpad(n::text, 6, '0'), 'lot_id', null,
                'components', jsonb_build_array(jsonb_build_object('name', 'shell', 'serial', 'S' || n, 'materialLotNumber', 'ML' || n / 50,
                    'castNumber', 'C', 'materialLotId', pg_temp.made('lot', n / 50))))) made;

        INSERT INTO weld_runs SELECT made.*
        FROM (SELECT to_jsonb(r) - 'log' - 'checks' || '{"gate": []}' AS row FROM weld_runs r WHERE vessel_serial = 'NR10-0001' LIMIT 1) one,
            generate_series(1, {0}::bigint) n, generate_series(1, 2) pass,
            LATERAL jsonb_populate_record(NULL::weld_runs, one.row || jsonb_build_object(
                'id', pg_temp.made('run', 2 * n + pass), 'vessel_id', pg_temp.made('vessel', n), 'pass_number', pass,
                'tool_id', pg_temp.made('tool', n / 100), 'machine_id', pg_temp.made('machine', n % 5),
                'operator_id', pg_temp.made('operator', n % 20), 'procedure_revision_id', pg_temp.made('procedure', n / 5000),
                'started_at', timestamptz '2021-01-04' + n * 1825.0 / {0} * interval '1 day')) made;

        INSERT INTO leak_tests SELECT made.*
        FROM (SELECT to_jsonb(t) AS row FROM leak_tests t WHERE vessel_serial = 'NR10-0001' LIMIT 1) one, generate_series(1, {0}::bigint) n,
            LATERAL jsonb_populate_record(NULL::leak_tests, one.row || jsonb_build_object(
                'id', pg_temp.made('leak', n), 'vessel_id', pg_temp.made('vessel', n),
                'tested_at', timestamptz '2021-01-05' + n * 1825.0 / {0} * interval '1 day',
                'instruments', jsonb_build_array(jsonb_build_object('id', pg_temp.made('gauge', n % 40), 'mark', 'G')))) made;

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
