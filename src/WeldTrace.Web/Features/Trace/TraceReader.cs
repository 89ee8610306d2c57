using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Vessels;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Trace;

/// <summary>The vessels that fit, and what was asked in words.</summary>
public sealed record TracedVessels(
    IReadOnlyList<TracedVessel> Rows,
    int Total,
    IReadOnlyList<string> Words,
    IReadOnlyList<FieldFault> Faults
);

/// <summary>Looks from material, tools, people and measurements to every vessel that they touched.</summary>
public sealed class TraceReader(IDbContextFactory<WeldTraceDbContext> contexts, SiteReader sites)
{
    public static readonly IReadOnlyList<string> SortKeys = ["serial", "lot", "state"];

    public async Task<TracedVessels> ReadAsync(
        TableQuery query,
        bool whole,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(query);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var asking = new TraceAsking(db, query, await sites.GetAsync(cancellation));
        var question = await asking.ReadAsync(cancellation);
        if (asking.Faults.Count > 0)
        {
            return new TracedVessels([], 0, asking.Words, asking.Faults);
        }

        var found = db.Traced(question);
        var sorted = Sorted(found, query);
        var rows = await (whole ? sorted : sorted.Skip(query.Skip).Take(query.PageSize))
            .AsTraced()
            .ToListAsync(cancellation);
        return new TracedVessels(
            rows,
            whole ? rows.Count : await found.CountAsync(cancellation),
            asking.Words,
            []
        );
    }

    /// <summary>Where a vessel is, as far as its records tell.</summary>
    public static string Whereabouts(TracedVessel vessel)
    {
        ArgumentNullException.ThrowIfNull(vessel);
        return vessel switch
        {
            { Shipment: { } shipment } => $"{shipment.Consignee} ({shipment.Papers})",
            { State: VesselState.Shipped } => "shipped; the consignee is not on record",
            { State: VesselState.Expended or VesselState.Scrapped } => "used up at the site",
            { NextStep: { } next } => $"at the site, before step {next}",
            _ => "at the site, ready to be shipped",
        };
    }

    private static IQueryable<Vessel> Sorted(IQueryable<Vessel> vessels, TableQuery query) =>
        (query.Sort, query.Descending) switch
        {
            ("lot", false) => vessels.OrderBy(v => v.ProductionLot).ThenBy(v => v.Serial),
            ("lot", true) => vessels.OrderByDescending(v => v.ProductionLot).ThenBy(v => v.Serial),
            ("state", false) => vessels.OrderBy(v => v.State).ThenBy(v => v.Serial),
            ("state", true) => vessels.OrderByDescending(v => v.State).ThenBy(v => v.Serial),
            (_, true) => vessels.OrderByDescending(v => v.Serial),
            _ => vessels.OrderBy(v => v.Serial),
        };
}
