using Microsoft.EntityFrameworkCore;
using WeldTrace.Documents.Traveler;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.LogJudging;
using WeldTrace.Web.Pictures;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Vessels.Traveler;

/// <summary>Reads a vessel's records and prints its traveler.</summary>
public sealed class TravelerReader(
    IDbContextFactory<WeldTraceDbContext> contexts,
    SiteReader sites,
    PictureStore store,
    StampReader stamps
)
{
    /// <summary>The traveler as PDF; null when there is no such vessel.</summary>
    public async Task<byte[]?> PrintAsync(
        string serial,
        Uri site,
        Actor actor,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var history = await db.FindVesselHistoryAsync(serial, cancellation);
        return history is null ? null : await PrintAsync(db, history, site, actor, cancellation);
    }

    /// <summary>The traveler of a history already read.</summary>
    public async Task<byte[]> PrintAsync(
        WeldTraceDbContext db,
        VesselHistory history,
        Uri site,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(history);
        using var pdf = new MemoryStream();
        TravelerExporter.Write(await ModelAsync(db, history, site, actor, cancellation), pdf);
        return pdf.ToArray();
    }

    /// <summary>What the traveler of a history already read prints.</summary>
    public async Task<TravelerModel> ModelAsync(
        WeldTraceDbContext db,
        VesselHistory history,
        Uri site,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(history);
        return TravelerMapping.Map(await ReadAsync(db, history, site, actor, cancellation));
    }

    private async Task<TravelerSource> ReadAsync(
        WeldTraceDbContext db,
        VesselHistory history,
        Uri site,
        Actor actor,
        CancellationToken cancellation
    )
    {
        var settings = await sites.GetAsync(cancellation);
        var usedIds = history.Runs.Select(r => r.ProcedureRevisionId).ToList();
        var numbers = history.Design.Content.Joints.Select(j => j.ProcedureNumber).ToList();
        var procedures = await db
            .ProcedureRevisions.AsNoTracking()
            .Where(p =>
                usedIds.Contains(p.Id)
                || (numbers.Contains(p.Number) && p.State == ProcedureState.Released)
            )
            .ToDictionaryAsync(p => p.Id, cancellation);
        var toolIds = procedures.Values.Select(p => p.Content.ToolDesignId).ToList();
        return new TravelerSource(
            settings,
            history,
            procedures,
            await db
                .ToolDesigns.AsNoTracking()
                .Where(d => toolIds.Contains(d.Id))
                .ToDictionaryAsync(d => d.Id, cancellation),
            await PicturesAsync(history, cancellation),
            await db.LoadLogPlotsAsync(history.Runs, procedures, settings.Units, cancellation),
            new Uri(site, Routes.Vessel(history.Vessel.Serial)).AbsoluteUri,
            await stamps.ReadAsync(actor, cancellation)
        );
    }

    /// <summary>The photographs of the sections, upright and no larger than print needs.</summary>
    private async Task<Dictionary<string, byte[]>> PicturesAsync(
        VesselHistory history,
        CancellationToken cancellation
    )
    {
        Dictionary<string, byte[]> pictures = [];
        foreach (var photograph in history.Sections.Select(s => s.Photograph))
        {
            if (
                !pictures.ContainsKey(photograph.Sha256)
                && await store.WholeAsync(photograph, PrintedSections.LongestSide, cancellation)
                    is { } picture
            )
            {
                pictures.Add(photograph.Sha256, picture);
            }
        }

        return pictures;
    }
}
