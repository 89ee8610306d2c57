using WeldTrace.Documents.Book;
using WeldTrace.Documents.Tools;
using WeldTrace.Domain.Records;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Tools.Card;

/// <summary>Prints the card of a tool.</summary>
public sealed class ToolCardReader(ToolReader tools, StampReader stamps)
    : RecordPaper<ToolCardModel>(BookChapter.Of, ToolCardExporter.Write)
{
    public override IReadOnlyList<string> Kinds => ["tool"];

    protected override async Task<ToolCardModel?> ModelAsync(
        Guid id,
        Uri address,
        Actor actor,
        CancellationToken cancellation
    )
    {
        if (await tools.FindAsync(id, cancellation) is not { } view)
        {
            return null;
        }

        return ToolCardMapping.Map(
            view,
            await stamps.ReadAsync(actor, cancellation),
            new Uri(address, Routes.Tool(id)).AbsoluteUri
        );
    }
}

public static class ToolCardEndpoint
{
    public static void MapToolCard(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            "/tools/{id:guid}/card.pdf",
            (Guid id, HttpContext http, ToolCardReader reader) =>
                http.PrintAsync((site, actor, token) => reader.PrintAsync(id, site, actor, token))
        );
}
