using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Sectioning;

namespace WeldTrace.Persistence.Loading;

public static class SectionLoading
{
    /// <summary>The runs that a section shows, in the order in which they were welded. Tracked.</summary>
    public static async Task<IReadOnlyList<RunRecords>> RunsOfJointAsync(
        this WeldTraceDbContext db,
        SectionExamination section,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(section);
        var pass = section.Cut.PassNumber;
        var ids = await db
            .WeldRuns.Where(r =>
                r.VesselId == section.VesselId
                && r.JointCode == section.Cut.JointCode
                && (pass == null || r.PassNumber == pass)
            )
            .OrderBy(r => r.StartedAt)
            .Select(r => r.Id)
            .ToListAsync(cancellation);
        List<RunRecords> runs = [];
        foreach (var id in ids)
        {
            runs.Add((await db.FindRunAsync(id, cancellation))!);
        }

        return runs;
    }
}
