using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Labels;

public static class LabelEndpoint
{
    public static void MapLabels(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            Routes.LabelSheet,
            (string? kind, string[]? id, HttpContext http, LabelReader reader) =>
                http.PrintAsync(
                    (site, actor, token) =>
                        reader.PrintAsync(Kind(kind), [.. Ids(id)], site, actor, token)
                )
        );

    // Whatever an address has typed into it, it chooses labels or none.
    private static LabelKind Kind(string? text) =>
        Enum.TryParse<LabelKind>(text, out var kind) && Enum.IsDefined(kind) ? kind : default;

    private static IEnumerable<Guid> Ids(string[]? texts) =>
        (texts ?? [])
            .Select(t => Guid.TryParse(t, out var id) ? id : Guid.Empty)
            .Where(id => id != Guid.Empty)
            .Take(LabelReader.Most);
}
