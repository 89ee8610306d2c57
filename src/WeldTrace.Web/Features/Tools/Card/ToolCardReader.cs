using WeldTrace.Documents.Book;
using WeldTrace.Documents.Tools;
using WeldTrace.Domain.Records;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Tools.Card;

/// <summary>Prints the card of a tool.</summary>
public sealed class ToolCardReader(ToolReader tools, StampReader stamps) : IBookChapters
{
    public IReadOnlyList<string> Kinds => ["tool"];

    public async Task<BookChapter?> FindChapterAsync(
        Guid id,
        Uri address,
        Actor actor,
        CancellationToken cancellation
    ) =>
        await ModelAsync(id, address, actor, cancellation) is { } model
            ? BookChapter.Of(model)
            : null;

    public async Task<byte[]?> PrintAsync(
        Guid id,
        Uri address,
        Actor actor,
        CancellationToken cancellation
    )
    {
        if (await ModelAsync(id, address, actor, cancellation) is not { } model)
        {
            return null;
        }

        using var pdf = new MemoryStream();
        ToolCardExporter.Write(model, pdf);
        return pdf.ToArray();
    }

    private async Task<ToolCardModel?> ModelAsync(
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
