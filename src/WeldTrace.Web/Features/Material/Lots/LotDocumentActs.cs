using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Material.Lots;

/// <summary>Files the document of a lot and its results, as typed.</summary>
internal static class LotDocumentActs
{
    /// <summary>What was typed, ready for the lot.</summary>
    public sealed record Typed(InspectionDocumentType Type, MaterialValues? Values);

    public static Typed Read(LotDocumentForm form, Entries entries) =>
        new(
            form.HasDocument
                ? entries.Choice<InspectionDocumentType>(
                    form.Type,
                    "Type of the document",
                    nameof(form.Type)
                )
                : default,
            form.Read(entries)
        );

    public static async Task<Outcome> ApplyAsync(
        WeldTraceDbContext db,
        MaterialLot lot,
        LotDocumentForm form,
        Typed typed,
        string? fileSha256,
        Actor actor,
        DateTimeOffset at,
        CancellationToken cancellation
    )
    {
        var filed = form.HasDocument
            ? lot.FileDocument(typed.Type, form.ProductStandard ?? "", fileSha256, actor, at)
            : Outcome.Accepted;
        if (!filed.IsAccepted || typed.Values is not { } values)
        {
            return filed;
        }

        var minima = await db.LimitTables.SingleOrDefaultAsync(
            t => t.Id == form.Minima,
            cancellation
        );
        return lot.RecordResults(values, minima, actor, at);
    }
}
