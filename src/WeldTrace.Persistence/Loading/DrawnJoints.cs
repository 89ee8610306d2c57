using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.VesselDesigns;

namespace WeldTrace.Persistence.Loading;

/// <summary>A joint of a drawing that names a procedure.</summary>
/// <param name="Design">The drawing.</param>
/// <param name="Joint">Its joint.</param>
public sealed record DrawnJoint(VesselDesign Design, Joint Joint);

public static class DrawnJoints
{
    /// <summary>The joints of current drawings that are to be welded by a procedure.</summary>
    public static async Task<IReadOnlyList<DrawnJoint>> FindDrawnJointsAsync(
        this WeldTraceDbContext db,
        string? procedureNumber,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        if (string.IsNullOrWhiteSpace(procedureNumber))
        {
            return [];
        }

        // The joints stand in the drawing's content; current drawings are few.
        var designs = await db
            .VesselDesigns.AsNoTracking()
            .Where(d => d.State != DesignState.Superseded)
            .OrderBy(d => d.Number)
            .ThenByDescending(d => d.RevisionIndex)
            .ToListAsync(cancellation);
        return
        [
            .. designs.SelectMany(d =>
                d.Content.Joints.Where(j => j.ProcedureNumber == procedureNumber.Trim())
                    .Select(j => new DrawnJoint(d, j))
            ),
        ];
    }
}
