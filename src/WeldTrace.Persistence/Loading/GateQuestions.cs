using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Concessions;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Lots;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Domain.Welding;

namespace WeldTrace.Persistence.Loading;

/// <summary>
/// Everything that the rules before a weld ask the database, in one round trip: one question for each kind of record. What a record names
/// another by is looked up by the database itself.
/// </summary>
internal sealed class GateQuestions
{
    private readonly WeldChoice _choice;
    private readonly Answer<Vessel> _vessels;
    private readonly Answer<VesselDesign> _designs;
    private readonly Answer<ProductionLot> _lots;
    private readonly Answer<Finding> _findings;
    private readonly Answer<WeldRun> _runs;
    private readonly Answer<Concession> _concessions;
    private readonly Answer<ProcedureRevision> _revisions;
    private readonly Answer<Instrument> _instruments;
    private readonly Answer<Tool> _tools;
    private readonly Answer<ToolDesign> _toolDesigns;
    private readonly Answer<Machine> _machines;
    private readonly Answer<Certificate> _certificates;
    private readonly MaterialQuestions _material;
    private readonly ProductionQuestions _production;

    public GateQuestions(RoundTrip trip, WeldTraceDbContext db, string serial, WeldChoice choice)
    {
        _choice = choice;
        var vessels = db.Vessels.Where(v => v.Serial == serial);
        var ids = vessels.Select(v => v.Id);
        var tools = db.ToolsOf(choice.ToolCode);
        var welder = choice.Welder.PersonId;
        _vessels = trip.Ask(vessels);
        _designs = trip.Ask(
            db.VesselDesigns.Where(d => vessels.Select(v => v.DesignId).Contains(d.Id))
        );
        _lots = trip.Ask(db.ProductionLots.Where(l => vessels.Select(v => v.LotId).Contains(l.Id)));
        _findings = trip.Ask(db.Findings.Where(f => ids.Contains(f.VesselId)));
        _runs = trip.Ask(db.WeldRuns.Where(r => ids.Contains(r.VesselId)));
        _concessions = trip.Ask(
            db.Concessions.Where(c => ids.Contains(c.VesselId)).OrderBy(c => c.Id)
        );
        var revisions = ReleasedFor(db, serial);
        var machines = db.MachinesOf(choice.MachineCode);
        _revisions = trip.Ask(revisions);
        _instruments = trip.Ask(NamedByProcedures(db, serial));
        _tools = trip.Ask(tools);
        _toolDesigns = trip.Ask(
            db.ToolDesigns.Where(d => tools.Select(t => t.DesignId).Contains(d.Id))
        );
        _machines = trip.Ask(machines);
        _certificates = trip.Ask(db.Certificates.Where(c => c.PersonId == welder));
        _material = new(trip, db, serial);
        _production = new(
            trip,
            db,
            machines.Select(m => m.Id),
            revisions.Select(r => r.Id),
            choice.At
        );
    }

    /// <summary>The facts for a step; null when there is no such vessel, or no such weld step on its route.</summary>
    public WeldGateFacts? Answered(int sequence) =>
        _vessels.Single is { } vessel && vessel.Step(sequence) is { Kind: StepKind.Weld } step
            ? Answered(vessel, step, null)
            : null;

    /// <summary>The facts for the repair of a finding; null when there is no such vessel or finding, or no repair was decided on it.</summary>
    public WeldGateFacts? AnsweredForRepair(int finding) =>
        _vessels.Single is { } vessel
        && _findings.Rows.SingleOrDefault(f => f.Number == finding) is { } repair
        && repair.PlannedRepair?.Place is { } place
        && vessel.WeldStepOf(place.JointCode, place.PassNumber) is { } step
            ? Answered(vessel, step, repair)
            : null;

    private WeldGateFacts Answered(Vessel vessel, RouteStep step, Finding? repair)
    {
        var (design, material) = (_designs.Rows.Single(), _material.Answered);
        var number = design.Content.Joint(step.JointCode)?.ProcedureNumber;
        var revision = _revisions.Rows.SingleOrDefault(p =>
            repair is null ? p.Number == number : p.Id == repair.PlannedRepair!.Procedure.Id
        );
        var instruments = revision?.Content.DetailsOrNone.Instruments ?? [];
        return new WeldGateFacts(
            vessel,
            step,
            design,
            _findings.Rows,
            _runs.Rows,
            revision,
            _tools.Single
        )
        {
            Repair = repair,
            Machine = _machines.Single,
            ToolDesign = _toolDesigns.Single,
            Instruments =
            [
                .. _instruments.Rows.IntersectBy(instruments.Select(i => i.Id), i => i.Id),
            ],
            Welder = _choice.Welder,
            Certificates = _certificates.Rows,
            Material = material.Facts,
            Preparation = material.Preparation,
            Concessions = _concessions.Rows,
            Lot = _lots.Single,
            Production = (design.Content.ProductionTests, _machines.Single, revision)
                is ({ }, { } machine, { } released)
                ? _production.Answered(machine.Id, released.Id)
                : null,
            Now = _choice.At,
            Today =
                material.Site?.DayOf(_choice.At) ?? DateOnly.FromDateTime(_choice.At.UtcDateTime),
        };
    }

    /// <summary>The released revisions of the procedures that the joints of the vessel's design name, and those that its repairs name.</summary>
    private static IQueryable<ProcedureRevision> ReleasedFor(
        WeldTraceDbContext db,
        string serial
    ) =>
        db.ProcedureRevisions.FromSql(
            $"""
            SELECT * FROM procedure_revisions WHERE state = 'Released' AND number IN (
                SELECT j ->> 'procedureNumber'
                FROM vessels v
                JOIN vessel_designs d ON d.id = v.design_id
                CROSS JOIN jsonb_array_elements(d.content -> 'joints') j
                WHERE v.serial = {serial})
            OR state = 'Released' AND id IN (
                SELECT (f.planned_repair -> 'procedure' ->> 'id')::uuid
                FROM findings f JOIN vessels v ON v.id = f.vessel_id
                WHERE v.serial = {serial} AND f.planned_repair IS NOT NULL)
            """
        );

    /// <summary>The instruments that those revisions name; one without any has no such list.</summary>
    private static IQueryable<Instrument> NamedByProcedures(WeldTraceDbContext db, string serial) =>
        db.Instruments.FromSql(
            $"""
            SELECT * FROM instruments WHERE id IN (
                SELECT trim('"' FROM named::text)::uuid
                FROM vessels v
                JOIN vessel_designs d ON d.id = v.design_id
                CROSS JOIN jsonb_array_elements(d.content -> 'joints') j
                JOIN procedure_revisions p ON p.number = j ->> 'procedureNumber' AND p.state = 'Released'
                CROSS JOIN jsonb_path_query(p.content, '$.details.instruments[*].id') named
                WHERE v.serial = {serial}
                UNION
                SELECT trim('"' FROM named::text)::uuid
                FROM findings f
                JOIN vessels v ON v.id = f.vessel_id
                JOIN procedure_revisions p ON p.id = (f.planned_repair -> 'procedure' ->> 'id')::uuid
                CROSS JOIN jsonb_path_query(p.content, '$.details.instruments[*].id') named
                WHERE v.serial = {serial})
            """
        );
}
