using System.Globalization;
using DuckDB.NET.Data;
using WeldTrace.ProcessLogs;
using WeldTrace.TestSupport.Logs;

namespace WeldTrace.Benchmarks.Logs;

/// <summary>
/// The same file read into a table on the disk by DuckDB, with figures of every column over the traverse and the stretches outside each
/// window; without the hash of the file, the phases, the place on the seam and the check that the file comes back, which the intake has too.
/// </summary>
internal static class DuckDbIntake
{
    private const string Traverse = "\"feed [mm/min]\" > 100";
    private const double ShortestSeconds = 0.02;

    private static readonly (string Column, double Least, double Greatest)[] _windows =
    [
        ("Fz [kN]", 8.5, 10.5),
        ("torque [N.m]", 30, 45),
        ("spindle [rpm]", 780, 840),
        ("feed [mm/min]", 180, 216),
        ("tool temp [degC]", 26.85, 526.85),
    ];

    /// <summary>Takes a file in.</summary>
    /// <returns>Stretches outside the windows.</returns>
    public static int Take(string file)
    {
        var folder = Directory.CreateTempSubdirectory("weld-duckdb-");
        try
        {
            using var database = new DuckDBConnection(
                $"Data Source={Path.Combine(folder.FullName, "log.duckdb")}"
            );
            database.Open();
            Run(database, $"CREATE TABLE log AS SELECT * FROM read_csv('{file}', header = true)");
            Run(database, "CHECKPOINT");
            foreach (
                var column in ReferenceLog.Mapping.Columns.Where(c => c.Channel != LogChannel.Time)
            )
            {
                Run(database, Figures(column.Column));
            }

            return _windows.Sum(window => Run(database, Outside(window)));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static string Figures(string column) =>
        $"""
            SELECT avg("{column}"), stddev_samp("{column}"), min("{column}"), max("{column}"),
                quantile_cont("{column}", [0.01, 0.5, 0.99]), regr_slope("{column}", "t [s]")
            FROM log WHERE {Traverse}
            """;

    // Rows outside follow each other as long as their number rises as fast as their place in the table.
    private static string Outside((string Column, double Least, double Greatest) window) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"""
            SELECT min(t), max(t), min(v), max(v) FROM (
                SELECT "t [s]" AS t, "{window.Column}" AS v, rowid - row_number() OVER (ORDER BY rowid) AS stretch
                FROM log WHERE {Traverse} AND "{window.Column}" NOT BETWEEN {window.Least} AND {window.Greatest})
            GROUP BY stretch HAVING max(t) - min(t) >= {ShortestSeconds}
            """
        );

    private static int Run(DuckDBConnection database, string statement)
    {
        using var command = database.CreateCommand();
        command.CommandText = statement;
        using var rows = command.ExecuteReader();
        var count = 0;
        while (rows.Read())
        {
            count++;
        }

        return count;
    }
}
