using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Tooling;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Tables;

namespace WeldTrace.Web.Features.Tools.Designs;

/// <summary>
/// The revisions of the tool drawings. Their dimensions lie in a document and a site has few drawings, so the list is narrowed and
/// sorted after it is read.
/// </summary>
public sealed class ToolDesignListReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public const string NumberFilter = "number";
    public const string MaterialFilter = "material";

    private static readonly Dictionary<string, Func<ToolDesign, double>> Figures = new()
    {
        ["shoulder"] = d => d.Geometry.ShoulderDiameter.Metres,
        ["pin"] = d => d.Geometry.PinDiameter.Metres,
        ["length"] = d => d.Geometry.PinLength.Metres,
        ["life"] = d => d.Geometry.LifeLimit.Metres,
    };

    public static IReadOnlyList<string> SortKeys { get; } = ["number", "material", .. Figures.Keys];

    public async Task<(IReadOnlyList<ToolDesign> Rows, int Total)> ReadAsync(
        TableQuery query,
        bool whole,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(query);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var designs = await db
            .ToolDesigns.AsNoTracking()
            .OrderBy(d => d.Number)
            .ThenByDescending(d => d.RevisionIndex)
            .ToListAsync(cancellation);
        var fitting = designs.Where(d => Fits(d, query)).ToList();
        var sorted = Sort(fitting, query);
        return ([.. whole ? sorted : sorted.Skip(query.Skip).Take(query.PageSize)], fitting.Count);
    }

    private static bool Fits(ToolDesign design, TableQuery query) =>
        Has(design.Number, query.Filter(NumberFilter))
        && Has(design.Geometry.Material, query.Filter(MaterialFilter));

    private static bool Has(string text, string part) =>
        text.Contains(part.Trim(), StringComparison.OrdinalIgnoreCase);

    private static IEnumerable<ToolDesign> Sort(List<ToolDesign> designs, TableQuery query)
    {
        if (query.Sort is { } key && Figures.TryGetValue(key, out var figure))
        {
            return query.Descending ? designs.OrderByDescending(figure) : designs.OrderBy(figure);
        }

        Func<ToolDesign, string> word =
            query.Sort == "material" ? d => d.Geometry.Material : d => d.Number;
        return query.Descending
            ? designs.OrderByDescending(word, StringComparer.OrdinalIgnoreCase)
            : designs.OrderBy(word, StringComparer.OrdinalIgnoreCase);
    }
}
