using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Features.Trace;
using WeldTrace.Web.Reading;

namespace WeldTrace.Benchmarks.Million;

/// <summary>One thing to be recalled by.</summary>
/// <param name="What">Its kind.</param>
/// <param name="Named">Statement that finds its id by its name; null when only a window is asked.</param>
/// <param name="Where">Condition of the vessels: $1 is the id, $2 and $3 the window.</param>
/// <param name="HasWindow">Whether a window of days is asked too.</param>
/// <param name="NameAsync">Its name, of a vessel.</param>
internal sealed record Recalled(
    string What,
    string? Named,
    string Where,
    bool HasWindow,
    Func<WeldTraceDbContext, string, Task<string>> NameAsync
);

/// <summary>A question for vessels, as the application is asked and as it is written by hand.</summary>
internal sealed record RecallQuestion(
    Recalled Recalled,
    string Name,
    DateTimeOffset From,
    DateTimeOffset Until
)
{
    private const string Rows =
        "SELECT v.serial, v.production_lot, v.state, v.shipment ->> 'consignee', v.shipment ->> 'papers', v.next_step_label FROM vessels v WHERE ";

    private static readonly string[] Fields =
    [
        TraceFields.Lot,
        TraceFields.Tool,
        TraceFields.Component,
        TraceFields.Instrument,
        TraceFields.Certificate,
        TraceFields.Procedure,
    ];

    /// <summary>By the application, with the names that a person types.</summary>
    public async Task<IReadOnlyList<string?[]>> AskAsync(IServiceProvider services)
    {
        await using var scope = services.CreateAsyncScope();
        var found = await scope
            .ServiceProvider.GetRequiredService<TraceReader>()
            .ReadAsync(
                TableQuery.Read(new Uri(Address()), TraceReader.SortKeys),
                whole: true,
                CancellationToken.None
            );
        return
        [
            .. found.Rows.Select(v =>
                new[]
                {
                    v.Serial,
                    v.ProductionLot,
                    v.State.ToString(),
                    v.Shipment?.Consignee,
                    v.Shipment?.Papers,
                    v.NextStep,
                }
            ),
        ];
    }

    /// <summary>By hand: first what the name stands for, since an unknown one has to be told, and then the vessels.</summary>
    public async Task<IReadOnlyList<string?[]>> AskByHandAsync(NpgsqlConnection connection)
    {
        object? id = Guid.Empty;
        if (Recalled.Named is { } named)
        {
            await using NpgsqlCommand find = new(named, connection)
            {
                Parameters = { new() { Value = Name } },
            };
            id = await find.ExecuteScalarAsync();
        }

        await using NpgsqlCommand command = new(
            Rows + Recalled.Where + " ORDER BY v.serial",
            connection
        );
        foreach (object? value in (object?[])[id, From.UtcDateTime, Until.UtcDateTime])
        {
            command.Parameters.Add(new() { Value = value });
        }

        List<string?[]> rows = [];
        await using var reader = await command.ExecuteReaderAsync();
        while (await reader.ReadAsync())
        {
            var row = new string?[reader.FieldCount];
            for (var i = 0; i < row.Length; i++)
            {
                row[i] = reader.IsDBNull(i) ? null : reader.GetString(i);
            }

            rows.Add(row);
        }

        return rows;
    }

    private string Address()
    {
        List<string> asked = [];
        if (Recalled.Named is not null)
        {
            var asks = Fields.Single(f => Recalled.What.Contains(f, StringComparison.Ordinal));
            asked.Add($"{asks}={Uri.EscapeDataString(Name)}");
        }

        if (Recalled.HasWindow)
        {
            asked.Add($"{TraceFields.From}={Day(From)}");
            asked.Add($"{TraceFields.Until}={Day(Until.AddDays(-1))}");
        }

        return $"http://site{Routes.Trace}?{string.Join('&', asked)}";
    }

    private static string Day(DateTimeOffset at) =>
        at.AddHours(12).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}

internal static class RecalledThings
{
    private const string Runs = "v.id IN (SELECT vessel_id FROM weld_runs r WHERE ";
    private const string InWindow = "r.started_at >= $2 AND r.started_at < $3)";
    private const string Any = " AND ($2 < $3)";

    public static IReadOnlyList<Recalled> All { get; } =
    [
        new(
            "a material lot",
            "SELECT id FROM material_lots WHERE number = $1",
            "v.components @> jsonb_build_array(jsonb_build_object('materialLotId', $1))" + Any,
            false,
            async (db, serial) =>
            {
                var vessel = await db.Vessels.SingleAsync(v => v.Serial == serial);
                var id = vessel.Components[0].MaterialLotId;
                return (await db.MaterialLots.SingleAsync(l => l.Id == id)).Number;
            }
        ),
        new(
            "a tool",
            "SELECT id FROM tools WHERE mark = $1",
            Runs + "r.tool_id = $1)" + Any,
            false,
            async (db, serial) =>
                await db
                    .Tools.Where(t =>
                        t.Id
                        == db.WeldRuns.Where(r =>
                                r.VesselSerial == serial
                                && r.VesselId == db.Vessels.Single(v => v.Serial == serial).Id
                            )
                            .OrderBy(r => r.StartedAt)
                            .Select(r => r.ToolId)
                            .First()
                    )
                    .Select(t => t.Mark)
                    .SingleAsync()
        ),
        new(
            "a component",
            "SELECT id FROM components WHERE serial = $1",
            "v.id IN (SELECT vessel_id FROM components WHERE id = $1)" + Any,
            false,
            async (db, serial) =>
                (await db.FindVesselHistoryAsync(serial, default))!.Material.Components[0].Serial
        ),
        new(
            "an instrument and days",
            "SELECT id FROM instruments WHERE mark = $1",
            """
            v.id IN (
                SELECT vessel_id FROM leak_tests WHERE instruments @> jsonb_build_array(jsonb_build_object('id', $1)) AND tested_at >= $2 AND tested_at < $3
                UNION ALL SELECT vessel_id FROM pressure_tests WHERE instruments @> jsonb_build_array(jsonb_build_object('id', $1)) AND tested_at >= $2 AND tested_at < $3
                UNION ALL SELECT vessel_id FROM sections WHERE instruments @> jsonb_build_array(jsonb_build_object('id', $1)) AND tested_at >= $2 AND tested_at < $3
                UNION ALL SELECT vessel_id FROM joint_fit_ups WHERE instrument_id = $1 AND measured_at >= $2 AND measured_at < $3)
            """,
            true,
            async (db, serial) =>
            {
                var history = (await db.FindVesselHistoryAsync(serial, default))!;
                var id = history.LeakTests.SelectMany(t => t.Instruments ?? []).First().Id;
                return (await db.Instruments.SingleAsync(i => i.Id == id)).Mark;
            }
        ),
        new(
            "a welder's certificate and days",
            "SELECT id FROM certificates WHERE number = $1",
            // While the certificate held, by the site's calendar.
            """
            v.id IN (
                SELECT r.vessel_id FROM certificates c, sites s, weld_runs r
                WHERE c.id = $1 AND r.operator_id = c.person_id AND r.started_at >= $2 AND r.started_at < $3
                    AND r.started_at >= (c.text ->> 'testedOn')::timestamp AT TIME ZONE s.time_zone_id
                    AND r.started_at < c.expires_on::timestamp AT TIME ZONE s.time_zone_id)
            """,
            true,
            async (db, serial) =>
            {
                var history = (await db.FindVesselHistoryAsync(serial, default))!;
                var id = history.Runs[0].OperatorId;
                return (await db.Certificates.FirstAsync(c => c.PersonId == id)).Number;
            }
        ),
        new(
            "a procedure revision and days",
            "SELECT id FROM procedure_revisions WHERE number || ' rev ' || chr(64 + revision_index) = $1",
            Runs + "r.procedure_revision_id = $1 AND " + InWindow,
            true,
            async (db, serial) =>
                (await db.FindVesselHistoryAsync(serial, default))!.Runs[0].ProcedureLabel
        ),
        new(
            "days alone",
            null,
            "($1 IS NOT NULL) AND " + Runs + InWindow,
            true,
            (_, _) => Task.FromResult("")
        ),
    ];
}
