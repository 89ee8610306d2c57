using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Compliance;
using WeldTrace.Domain.Vessels;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;

namespace WeldTrace.Web.Features.Vessels.Compliance;

/// <summary>A vessel with its compliance matrix.</summary>
public sealed record VesselCompliance(Vessel Vessel, IReadOnlyList<ComplianceLine> Lines)
{
    /// <summary>How many lines are in a state.</summary>
    public int CountOf(ComplianceState state) => Lines.Count(l => l.State == state);
}

public sealed class ComplianceReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public async Task<VesselCompliance?> FindAsync(string serial, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        if (await db.FindVesselHistoryAsync(serial, cancellation) is not { } history)
        {
            return null;
        }

        var records = await db.LoadRecordsBehindAsync(history, cancellation);
        return new(
            history.Vessel,
            ComplianceMatrix.Of(history.Vessel, history.Design.Content, records)
        );
    }
}
