using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Preparation;
using WeldTrace.Domain.Sites;

namespace WeldTrace.Persistence.Loading;

/// <summary>What is asked about the material of a vessel, to be read only. Only its serial is known when the question is asked.</summary>
internal sealed class MaterialQuestions
{
    private readonly Answer<MaterialLot> _lots;
    private readonly Answer<CutComponent> _components;
    private readonly Answer<HeatTreatment> _treatments;
    private readonly Answer<JointCleaning> _cleanings;
    private readonly Answer<JointFitUp> _fitUps;
    private readonly Answer<Site> _sites;

    public MaterialQuestions(RoundTrip trip, WeldTraceDbContext db, string serial)
    {
        var vessel = db.Vessels.Where(v => v.Serial == serial).Select(v => v.Id);
        _lots = trip.Ask(
            db.MaterialLots.FromSql(
                    $"""
                    SELECT * FROM material_lots WHERE id IN (
                        SELECT (c ->> 'materialLotId')::uuid
                        FROM vessels v, jsonb_array_elements(v.components) c WHERE v.serial = {serial})
                    """
                )
                .AsNoTracking()
                .OrderBy(l => l.Number)
        );
        _components = trip.Ask(
            db.Components.FromSql(
                    $"""
                    SELECT * FROM components WHERE id IN (
                        SELECT (c ->> 'componentId')::uuid
                        FROM vessels v, jsonb_array_elements(v.components) c WHERE v.serial = {serial})
                    """
                )
                .AsNoTracking()
                .OrderBy(c => c.Serial)
        );
        // The vessel itself may have been treated, or a part of it before. The parts are found first: the database expects many of
        // them, and would start processes of its own to look for their treatments.
        _treatments = trip.Ask(
            db.HeatTreatments.FromSql(
                    $"""
                    WITH part (id) AS MATERIALIZED (
                        SELECT v.id::text FROM vessels v WHERE v.serial = {serial}
                        UNION ALL
                        SELECT c ->> 'componentId'
                        FROM vessels v, jsonb_array_elements(v.components) c WHERE v.serial = {serial}
                    )
                    SELECT DISTINCT ON (h.id) h.* FROM part
                    JOIN heat_treatments h ON h.parts @> jsonb_build_array(jsonb_build_object('id', part.id))
                    """
                )
                .AsNoTracking()
                .OrderBy(t => t.Number)
        );
        _cleanings = trip.Ask(
            db.JointCleanings.AsNoTracking()
                .Where(c => vessel.Contains(c.VesselId))
                .OrderBy(c => c.CleanedAt)
        );
        _fitUps = trip.Ask(
            db.JointFitUps.AsNoTracking()
                .Where(f => vessel.Contains(f.VesselId))
                .OrderBy(f => f.MeasuredAt)
        );
        _sites = trip.Ask(db.Sites.AsNoTracking());
    }

    public VesselMaterial Answered =>
        new(
            _lots.Rows,
            _components.Rows,
            _treatments.Rows,
            new PreparationFacts(_cleanings.Rows, _fitUps.Rows),
            _sites.Single
        );
}
