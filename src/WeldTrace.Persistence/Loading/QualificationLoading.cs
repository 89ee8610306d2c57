using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Qualification;

namespace WeldTrace.Persistence.Loading;

/// <summary>A qualification with its procedure, pieces and results.</summary>
/// <param name="Record">Qualification record.</param>
/// <param name="Revision">Procedure revision that it qualifies.</param>
/// <param name="Pieces">Test pieces in the order of welding.</param>
/// <param name="Tests">Results in the order of entry.</param>
public sealed record QualificationRecords(
    QualificationRecord Record,
    ProcedureRevision Revision,
    IReadOnlyList<TestPiece> Pieces,
    IReadOnlyList<SpecimenTest> Tests
)
{
    /// <summary>What is welded and tested, and what is missing.</summary>
    public QualificationStanding Standing => QualificationStanding.Of(Record, Pieces, Tests);
}

public static class QualificationLoading
{
    /// <summary>A qualification with all that belongs to it; null when there is none. Tracked.</summary>
    public static async Task<QualificationRecords?> FindQualificationAsync(
        this WeldTraceDbContext db,
        Guid id,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        var record = await db.Qualifications.SingleOrDefaultAsync(q => q.Id == id, cancellation);
        return record is null
            ? null
            : new QualificationRecords(
                record,
                await db.ProcedureRevisions.SingleAsync(
                    p => p.Id == record.ProcedureRevisionId,
                    cancellation
                ),
                await db
                    .TestPieces.Where(p => p.QualificationId == id)
                    .OrderBy(p => p.StartedAt)
                    .ToListAsync(cancellation),
                await db
                    .SpecimenTests.Where(t => t.QualificationId == id)
                    .OrderBy(t => t.SignedAt)
                    .ToListAsync(cancellation)
            );
    }

    /// <summary>The edition of a kind of table that a plan was computed by.</summary>
    public static async Task<LimitTable> TableOfAsync(
        this WeldTraceDbContext db,
        QualificationRecord record,
        LimitKind kind,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(record);
        var ids = record.Plan.Tables.Select(t => t.Id).ToList();
        return await db.LimitTables.SingleAsync(
            t => ids.Contains(t.Id) && t.Covers == kind,
            cancellation
        );
    }
}
