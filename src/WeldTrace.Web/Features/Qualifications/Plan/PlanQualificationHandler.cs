using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Qualifications.Plan;

/// <summary>What the form of a plan offers.</summary>
/// <param name="Revision">Procedure revision.</param>
/// <param name="Tables">Current editions of all tables.</param>
/// <param name="NextNumber">A number that is free.</param>
public sealed record PlanChoices(
    ProcedureRevision Revision,
    IReadOnlyList<LimitTable> Tables,
    string NextNumber
);

/// <summary>Plans a qualification record.</summary>
public sealed class PlanQualificationHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    TimeProvider clock
)
{
    public async Task<PlanChoices?> ChoicesAsync(Guid revisionId, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var revision = await db
            .ProcedureRevisions.AsNoTracking()
            .SingleOrDefaultAsync(p => p.Id == revisionId, cancellation);
        if (revision is null)
        {
            return null;
        }

        var count = await db.Qualifications.CountAsync(
            q => q.ProcedureNumber == revision.Number,
            cancellation
        );
        return new PlanChoices(
            revision,
            await db
                .LimitTables.AsNoTracking()
                .Where(t => t.SupersededById == null)
                .OrderBy(t => t.Code)
                .ToListAsync(cancellation),
            FormattableString.Invariant($"WPQR-{revision.Number}-{count + 1}")
        );
    }

    public async Task<Outcome<QualificationRecord>> HandleAsync(
        Guid revisionId,
        PlanQualificationForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var revision = await db.ProcedureRevisions.SingleOrDefaultAsync(
            p => p.Id == revisionId,
            cancellation
        );
        if (revision is null)
        {
            return new Refusal("procedure", "There is no such procedure revision.");
        }

        var entries = new Entries();
        var request = form.Read(entries);
        List<Refusal> refusals = [.. entries.Refusals];
        var tables = await TablesAsync(db, form, refusals, cancellation);
        if (tables is null || refusals.Count > 0)
        {
            return refusals;
        }

        var record = QualificationRecord.Open(
            form.Number ?? "",
            revision,
            request,
            tables,
            actor,
            clock.GetUtcNow()
        );
        if (!record.IsAccepted)
        {
            return record;
        }

        db.Add(record.Value);
        var saved = await db.SaveAsync(cancellation);
        return saved.IsAccepted
            ? record
            : saved
                .Refusals.Select(r =>
                    r.Code == "exists" ? r with { Field = nameof(form.Number) } : r
                )
                .ToList();
    }

    private static async Task<PlanTables?> TablesAsync(
        WeldTraceDbContext db,
        PlanQualificationForm form,
        List<Refusal> refusals,
        CancellationToken cancellation
    )
    {
        Guid[] ids =
        [
            form.Groups,
            form.ExtentOfTesting,
            form.TensileFactors,
            form.BendFormers,
            form.Imperfections,
            form.QualificationRange,
        ];
        var found = await db
            .LimitTables.AsNoTracking()
            .Where(t => ids.Contains(t.Id))
            .ToListAsync(cancellation);
        var tables = new[]
        {
            Find(form.Groups, LimitKind.MaterialGroups, nameof(form.Groups)),
            Find(form.ExtentOfTesting, LimitKind.ExtentOfTesting, nameof(form.ExtentOfTesting)),
            Find(form.TensileFactors, LimitKind.TensileFactors, nameof(form.TensileFactors)),
            Find(form.BendFormers, LimitKind.BendFormers, nameof(form.BendFormers)),
            Find(form.Imperfections, LimitKind.Imperfections, nameof(form.Imperfections)),
            Find(
                form.QualificationRange,
                LimitKind.QualificationRange,
                nameof(form.QualificationRange)
            ),
        };
        return tables.OfType<LimitTable>().ToList() is { Count: 6 } t
            ? new PlanTables(t[0], t[1], t[2], t[3], t[4], t[5])
            : null;

        LimitTable? Find(Guid id, LimitKind kind, string field)
        {
            var table = found.FirstOrDefault(t => t.Id == id && t.Covers == kind);
            if (table is null)
            {
                refusals.Add(
                    new Refusal("table", $"Choose the table of {LimitWords.Of(kind)}.", field)
                );
            }

            return table;
        }
    }
}
