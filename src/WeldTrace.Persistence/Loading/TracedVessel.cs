using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Vessels;

namespace WeldTrace.Persistence.Loading;

/// <summary>A vessel in a list of many: what it is, its state and where it is, without its route and parts.</summary>
/// <param name="Id">Vessel.</param>
/// <param name="Serial">Serial number.</param>
/// <param name="ProductionLot">Production lot.</param>
/// <param name="State">State.</param>
/// <param name="Shipment">Where it went; null while it is at the site.</param>
/// <param name="NextStep">Number and title of the first step that is not done; null when all are.</param>
public sealed record TracedVessel(
    Guid Id,
    string Serial,
    string ProductionLot,
    VesselState State,
    Shipment? Shipment,
    string? NextStep
)
{
    internal const string NextStepProperty = "NextStepLabel";
}

public static class TracedVesselLoading
{
    /// <summary>The vessels as rows of a list.</summary>
    public static IQueryable<TracedVessel> AsTraced(this IQueryable<Vessel> vessels) =>
        vessels.Select(v => new TracedVessel(
            v.Id,
            v.Serial,
            v.ProductionLot,
            v.State,
            v.Shipment,
            EF.Property<string?>(v, TracedVessel.NextStepProperty)
        ));
}
