using System.Data;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Storage;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;

namespace WeldTrace.Persistence.Loading;

public static class RecordsBehind
{
    /// <summary>
    /// The vessel's records, the signatures, and what they rest on: design, procedures with their qualification, tools, machines, material,
    /// instruments with their calibrations, certificates of whoever welded or tested.
    /// </summary>
    public static async Task<IReadOnlyList<Record>> LoadRecordsBehindAsync(
        this WeldTraceDbContext db,
        VesselHistory history,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(history);
        var procedureIds = history.Runs.Select(r => r.ProcedureRevisionId).ToList();
        var toolIds = history.Runs.Select(r => r.ToolId).ToList();
        var machineIds = history.Runs.Select(r => r.MachineId).ToList();
        var procedures = await db
            .ProcedureRevisions.AsNoTracking()
            .Where(p => procedureIds.Contains(p.Id))
            .ToListAsync(cancellation);
        var designIds = procedures.Select(p => p.Content.ToolDesignId).ToList();
        List<Record> records =
        [
            .. history.Records,
            history.Design,
            .. procedures,
            .. await db
                .ToolDesigns.AsNoTracking()
                .Where(d => designIds.Contains(d.Id))
                .ToListAsync(cancellation),
            .. await db
                .Tools.AsNoTracking()
                .Where(t => toolIds.Contains(t.Id))
                .ToListAsync(cancellation),
            .. await db
                .Machines.AsNoTracking()
                .Where(m => machineIds.Contains(m.Id))
                .ToListAsync(cancellation),
            .. history.Material.Lots,
            .. history.Lot is { } lot ? [lot] : Array.Empty<Record>(),
        ];
        records.AddRange(await QualificationsBehindAsync(db, procedures, cancellation));
        records.AddRange(await ProofsBehindAsync(db, history, cancellation));
        var ids = records.Select(r => r.Id).ToList();
        records.AddRange(
            await db
                .Signatures.AsNoTracking()
                .Where(s => ids.Contains(s.SignedId))
                .ToListAsync(cancellation)
        );
        return records;
    }

    /// <summary>The certificates, instruments and production tests by which runs were begun and the vessel was tested.</summary>
    private static async Task<IReadOnlyList<Record>> ProofsBehindAsync(
        WeldTraceDbContext db,
        VesselHistory history,
        CancellationToken cancellation
    )
    {
        var behind = BehindRuns(history).ToLookup(n => n.Kind, n => n.Id);
        List<Guid> instruments = [.. behind["instrument"], .. InstrumentsOf(history)];
        var (certificates, people) = (behind["certificate"].ToList(), PeopleOf(history).ToList());
        var production = behind["production-test"].ToList();
        return
        [
            .. await db
                .Certificates.AsNoTracking()
                .Where(c => certificates.Contains(c.Id) || people.Contains(c.PersonId))
                .ToListAsync(cancellation),
            .. await db
                .Instruments.AsNoTracking()
                .Where(i => instruments.Contains(i.Id))
                .ToListAsync(cancellation),
            .. await db
                .ProductionTests.AsNoTracking()
                .Where(t => production.Contains(t.Id))
                .ToListAsync(cancellation),
        ];
    }

    private static IEnumerable<RecordName> BehindRuns(VesselHistory history) =>
        history.Runs.SelectMany(r => r.Gate).SelectMany(v => v.Behind ?? []);

    private static IEnumerable<Guid> InstrumentsOf(VesselHistory history) =>
        [
            .. Tests(history).SelectMany(t => t.Instruments ?? []).Select(i => i.Id),
            .. history.Laboratory.SelectMany(t => t.Instruments).Select(i => i.Id),
            .. history.Material.Preparation.FitUps.Select(f => f.InstrumentId),
        ];

    private static IEnumerable<Guid> PeopleOf(VesselHistory history) =>
        [
            .. history.WeldedBy,
            .. Tests(history).Select(t => t.InspectorId),
            .. history.Laboratory.Select(t => t.TesterId),
            .. history.SignOffs.Where(s => s.Examination is not null).Select(s => s.PersonId),
        ];

    private static IEnumerable<TestRecord> Tests(VesselHistory history) =>
        [.. history.LeakTests, .. history.PressureTests, .. history.Sections];

    /// <summary>The qualification records of procedures, with their test pieces and results.</summary>
    private static async Task<IReadOnlyList<Record>> QualificationsBehindAsync(
        WeldTraceDbContext db,
        IReadOnlyList<ProcedureRevision> procedures,
        CancellationToken cancellation
    )
    {
        var ids = procedures.Select(p => p.Qualified?.Id).OfType<Guid>().ToList();
        var qualifications = await db
            .Qualifications.AsNoTracking()
            .Where(q => ids.Contains(q.Id))
            .ToListAsync(cancellation);
        return
        [
            .. qualifications,
            .. await QualifiedByTestAsync(db, procedures, qualifications, cancellation),
            .. await db
                .TestPieces.AsNoTracking()
                .Where(p => ids.Contains(p.QualificationId))
                .ToListAsync(cancellation),
            .. await db
                .SpecimenTests.AsNoTracking()
                .Where(t => ids.Contains(t.QualificationId))
                .ToListAsync(cancellation),
        ];
    }

    /// <summary>The revisions that were welded for the qualification records, where a later one rests on the same record.</summary>
    private static async Task<IReadOnlyList<ProcedureRevision>> QualifiedByTestAsync(
        WeldTraceDbContext db,
        IReadOnlyList<ProcedureRevision> procedures,
        IReadOnlyList<QualificationRecord> qualifications,
        CancellationToken cancellation
    )
    {
        var known = procedures.Select(p => p.Id);
        var ids = qualifications.Select(q => q.ProcedureRevisionId).Except(known).ToList();
        return ids.Count == 0
            ? []
            : await db
                .ProcedureRevisions.AsNoTracking()
                .Where(p => ids.Contains(p.Id))
                .ToListAsync(cancellation);
    }

    /// <summary>A read-only transaction in which everything read is of one moment. Ended by disposing it.</summary>
    public static async Task<IDbContextTransaction> BeginSnapshotAsync(
        this DatabaseFacade database,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(database);
        return await database.BeginTransactionAsync(IsolationLevel.RepeatableRead, cancellation);
    }
}
