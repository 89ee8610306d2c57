using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;

namespace WeldTrace.Persistence.LedgerStore;

/// <summary>Reads all records; one that was changed so that it can't be read any more is told, and the others are read.</summary>
internal sealed class EveryRecord
{
    private readonly HashSet<Guid> _unreadable;
    private readonly List<string> _problems;
    private readonly List<Record> _records = [];

    private EveryRecord(HashSet<Guid> unreadable, List<string> problems) =>
        (_unreadable, _problems) = (unreadable, problems);

    /// <param name="db">Where they are.</param>
    /// <param name="unreadable">Takes the identities of those that can't be read.</param>
    /// <param name="problems">Takes a sentence about each of those.</param>
    /// <param name="cancellation">Ends the reading.</param>
    public static async Task<IReadOnlyList<Record>> ReadAsync(
        WeldTraceDbContext db,
        HashSet<Guid> unreadable,
        List<string> problems,
        CancellationToken cancellation
    )
    {
        var all = new EveryRecord(unreadable, problems);
        await all.AddAsync(db.Sites, cancellation);
        await all.AddAsync(db.SigningKeys, cancellation);
        await all.AddAsync(db.People, cancellation);
        await all.AddAsync(db.SystemTokens, cancellation);
        await all.AddAsync(db.SharedTablets, cancellation);
        await all.AddAsync(db.ProcedureRevisions, cancellation);
        await all.AddAsync(db.VesselDesigns, cancellation);
        await all.AddAsync(db.ToolDesigns, cancellation);
        await all.AddAsync(db.Tools, cancellation);
        await all.AddAsync(db.LimitTables, cancellation);
        await all.AddAsync(db.Qualifications, cancellation);
        await all.AddAsync(db.TestPieces, cancellation);
        await all.AddAsync(db.SpecimenTests, cancellation);
        await all.AddAsync(db.Certificates, cancellation);
        await all.AddAsync(db.Instruments, cancellation);
        await all.AddAsync(db.Machines, cancellation);
        await all.AddAsync(db.MaterialLots, cancellation);
        await all.AddAsync(db.Components, cancellation);
        await all.AddAsync(db.HeatTreatments, cancellation);
        await all.AddAsync(db.JointCleanings, cancellation);
        await all.AddAsync(db.JointFitUps, cancellation);
        await all.AddAsync(db.Vessels, cancellation);
        await all.AddAsync(db.ProductionLots, cancellation);
        await all.AddAsync(db.ProductionTests, cancellation);
        await all.AddAsync(db.WeldRuns, cancellation);
        await all.AddAsync(db.SignalReviews, cancellation);
        await all.AddAsync(db.VesselArchives, cancellation);
        await all.AddAsync(db.Concessions, cancellation);
        await all.AddAsync(db.LeakTests, cancellation);
        await all.AddAsync(db.PressureTests, cancellation);
        await all.AddAsync(db.Sections, cancellation);
        await all.AddAsync(db.LaboratoryTests, cancellation);
        await all.AddAsync(db.StepSignOffs, cancellation);
        await all.AddAsync(db.Findings, cancellation);
        await all.AddAsync(db.Signatures, cancellation);
        return all._records;
    }

    /// <summary>Those of one table that can be read.</summary>
    public static async Task<IReadOnlyList<T>> ReadAsync<T>(
        DbSet<T> table,
        CancellationToken cancellation
    )
        where T : Record
    {
        var readable = new EveryRecord([], []);
        await readable.AddAsync(table, cancellation);
        return [.. readable._records.Cast<T>()];
    }

    private async Task AddAsync<T>(DbSet<T> table, CancellationToken cancellation)
        where T : Record
    {
        try
        {
            _records.AddRange(await table.AsNoTracking().ToListAsync(cancellation));
        }
        catch (Exception failure) when (IsUnreadable(failure))
        {
            await AddOneByOneAsync(table, cancellation);
        }
    }

    private async Task AddOneByOneAsync<T>(DbSet<T> table, CancellationToken cancellation)
        where T : Record
    {
        foreach (var id in await table.Select(r => r.Id).ToListAsync(cancellation))
        {
            try
            {
                _records.Add(await table.AsNoTracking().SingleAsync(r => r.Id == id, cancellation));
            }
            catch (Exception failure) when (IsUnreadable(failure))
            {
                _unreadable.Add(id);
                _problems.Add(
                    $"{table.EntityType.GetTableName()} {id} was changed so that it can't be read any more: {failure.Message}"
                );
            }
        }
    }

    private static bool IsUnreadable(Exception failure) =>
        failure
            is JsonException
                or FormatException
                or ArgumentException
                or InvalidOperationException
                or InvalidCastException;
}
