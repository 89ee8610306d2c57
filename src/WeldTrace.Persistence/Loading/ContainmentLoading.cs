using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Vessels;

namespace WeldTrace.Persistence.Loading;

/// <summary>A vessel that has something in common with another one.</summary>
/// <param name="VesselId">Vessel.</param>
/// <param name="Serial">Its serial.</param>
/// <param name="State">Its state.</param>
/// <param name="Shared">What it has in common, parted by commas.</param>
/// <param name="Total">How many vessels there are in all, so that a page of them needs no second search.</param>
public sealed record SharingVessel(
    Guid VesselId,
    string Serial,
    string State,
    string Shared,
    long Total
)
{
    /// <summary>State as the domain has it.</summary>
    public VesselState VesselState => Enum.Parse<VesselState>(State);
}

public static class ContainmentLoading
{
    /// <summary>
    /// Vessels that share a tool, machine, procedure, operator, material lot or instrument with this one, in a window of days; each
    /// part of the query reads one index. Material knows no window.
    /// </summary>
    /// <param name="db">Where the records are.</param>
    /// <param name="vessel">Vessel with the finding; it is not among the rows.</param>
    /// <param name="shared">What to look for.</param>
    /// <param name="from">First instant of the window.</param>
    /// <param name="until">First instant after it.</param>
    public static IQueryable<SharingVessel> SharingWith(
        this WeldTraceDbContext db,
        Guid vessel,
        IReadOnlyCollection<SharedThing> shared,
        DateTimeOffset from,
        DateTimeOffset until
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(shared);
        var tool = shared.Contains(SharedThing.Tool);
        var machine = shared.Contains(SharedThing.Machine);
        var procedure = shared.Contains(SharedThing.Procedure);
        var welder = shared.Contains(SharedThing.Operator);
        var material = shared.Contains(SharedThing.MaterialLot);
        var gauge = shared.Contains(SharedThing.Instrument);
        return db.Database.SqlQuery<SharingVessel>(
            $"""
            WITH own AS (SELECT * FROM weld_runs WHERE vessel_id = {vessel}),
            gauges AS (
                SELECT DISTINCT jsonb_build_array(jsonb_build_object('id', used ->> 'id')) AS part, (used ->> 'id')::uuid AS id
                FROM (
                    SELECT instruments FROM leak_tests WHERE vessel_id = {vessel} UNION ALL
                    SELECT instruments FROM pressure_tests WHERE vessel_id = {vessel} UNION ALL SELECT instruments FROM sections WHERE vessel_id = {vessel}
                ) tests, jsonb_array_elements(coalesce(tests.instruments, '[]')) used
                WHERE {gauge}
            ),
            found AS (
                SELECT vessel_id, 'tool' AS what FROM weld_runs
                WHERE {tool} AND tool_id IN (SELECT tool_id FROM own) AND started_at >= {from} AND started_at < {until}
                UNION SELECT vessel_id, 'machine' FROM weld_runs
                WHERE {machine} AND machine_id IN (SELECT machine_id FROM own) AND started_at >= {from} AND started_at < {until}
                UNION SELECT vessel_id, 'procedure' FROM weld_runs
                WHERE {procedure} AND procedure_revision_id IN (SELECT procedure_revision_id FROM own) AND started_at >= {from} AND started_at < {until}
                UNION SELECT vessel_id, 'operator' FROM weld_runs
                WHERE {welder} AND operator_id IN (SELECT operator_id FROM own) AND started_at >= {from} AND started_at < {until}
                UNION SELECT v.id, 'material lot' FROM (
                    SELECT DISTINCT jsonb_build_array(jsonb_build_object('materialLotId', c ->> 'materialLotId')) AS part
                    FROM vessels, jsonb_array_elements(components) c WHERE id = {vessel} AND {material}
                ) lots JOIN vessels v ON v.components @> lots.part
                UNION SELECT t.vessel_id, 'instrument' FROM gauges JOIN leak_tests t ON t.instruments @> gauges.part WHERE t.tested_at >= {from} AND t.tested_at < {until}
                UNION SELECT t.vessel_id, 'instrument' FROM gauges JOIN pressure_tests t ON t.instruments @> gauges.part WHERE t.tested_at >= {from} AND t.tested_at < {until}
                UNION SELECT t.vessel_id, 'instrument' FROM gauges JOIN sections t ON t.instruments @> gauges.part WHERE t.tested_at >= {from} AND t.tested_at < {until}
                UNION SELECT f.vessel_id, 'instrument' FROM joint_fit_ups f
                WHERE {gauge} AND f.instrument_id IN (SELECT instrument_id FROM joint_fit_ups WHERE vessel_id = {vessel}) AND f.measured_at >= {from} AND f.measured_at < {until}
            )
            SELECT v.id AS vessel_id, v.serial, v.state, s.shared, count(*) OVER () AS total
            FROM (SELECT vessel_id, string_agg(what, ', ' ORDER BY what) AS shared FROM found
                WHERE vessel_id <> {vessel} GROUP BY vessel_id) s JOIN vessels v ON v.id = s.vessel_id
            """
        );
    }
}
