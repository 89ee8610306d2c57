using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Marks;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Home;

/// <summary>Production tests that are due, or soon will be.</summary>
internal static class ProductionWork
{
    public static async Task<IReadOnlyList<WaitingWork>> ReadAsync(
        WeldTraceDbContext db,
        Actor actor,
        DateTimeOffset now,
        CancellationToken cancellation
    )
    {
        if (!actor.HasAny(Role.Operator, Role.Inspector, Role.QualityManager))
        {
            return [];
        }

        var standings = await ProductionStanding.ReadAsync(db, now, cancellation);
        return
        [
            .. standings
                .Where(s => s.Due.Count > 0 || s.IsSoon)
                .Select(s => new WaitingWork(
                    s.Due.Count > 0 ? Urgency.Stopped : Urgency.Week,
                    s.Due.Count > 0 ? Mark.Failed : Mark.Warning,
                    s.Due.Count > 0 ? "due" : "soon due",
                    $"Production test of {s.Procedure.Label} on {s.Machine.Name}",
                    Routes.ProductionTests
                )),
        ];
    }
}
