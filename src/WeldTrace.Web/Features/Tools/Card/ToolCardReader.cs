using Microsoft.EntityFrameworkCore;
using WeldTrace.Documents;
using WeldTrace.Documents.Tools;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Persistence;
using WeldTrace.Web.Features.Tools.Show;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Tools.Card;

/// <summary>Prints the card of a tool.</summary>
public sealed class ToolCardReader(ToolReader tools, SiteReader sites, TimeProvider clock)
{
    public async Task<byte[]?> PrintAsync(
        Guid id,
        Uri address,
        Actor actor,
        CancellationToken cancellation
    )
    {
        if (await tools.FindAsync(id, cancellation) is not var (tool, design))
        {
            return null;
        }

        var site = await sites.GetAsync(cancellation);
        var model = new ToolCardModel
        {
            Stamp = new DocumentStamp
            {
                SiteName = site.Name,
                PrintedBy = actor.PrintedName,
                PrintedAt = clock.GetUtcNow(),
                TimeZone = site.TimeZone,
                Units = site.Units,
            },
            RecordAddress = new Uri(address, Routes.Tool(id)).AbsoluteUri,
            Serial = tool.Mark,
            State = PrintedMarks.Of(DomainMarks.Of(tool.State), Tool.StateWord(tool.State)),
            Design = design.Label,
            Particulars =
            [
                new LabelledValue(
                    "Shoulder diameter",
                    Millimetres(design.Geometry.ShoulderDiameter)
                ),
                new LabelledValue("Pin diameter", Millimetres(design.Geometry.PinDiameter)),
                new LabelledValue("Pin length", Millimetres(design.Geometry.PinLength)),
                new LabelledValue("Material", design.Geometry.Material),
                new LabelledValue("Evidence for the life", design.Geometry.LifeEvidence),
            ],
            Life = new ToolLife(tool.Used, tool.LifeLimit),
            Uses = [.. Uses(tool)],
        };
        using var pdf = new MemoryStream();
        ToolCardExporter.Write(model, pdf);
        return pdf.ToArray();
    }

    private static IEnumerable<ToolUseLine> Uses(Tool tool)
    {
        var total = Length.Zero;
        foreach (var use in tool.Uses)
        {
            total += use.Length;
            yield return new ToolUseLine(use.At, use.RunId.ToString("D")[^12..], use.Length)
            {
                Vessel = use.VesselSerial,
                TotalAfter = total,
            };
        }
    }

    private static string Millimetres(Length length) =>
        FormattableString.Invariant($"{length.Millimetres:0.###} mm");
}

public static class ToolCardEndpoint
{
    public static void MapToolCard(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            "/tools/{id:guid}/card.pdf",
            async (
                Guid id,
                HttpContext http,
                ToolCardReader reader,
                IDbContextFactory<WeldTraceDbContext> contexts
            ) =>
            {
                var actor = await CurrentActor.GetAsync(contexts, http.User, http.RequestAborted);
                var pdf = await reader.PrintAsync(
                    id,
                    http.SiteAddress(),
                    actor,
                    http.RequestAborted
                );
                return pdf is null ? Results.NotFound() : Results.File(pdf, "application/pdf");
            }
        );
}
