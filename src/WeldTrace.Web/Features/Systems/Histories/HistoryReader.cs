using System.Text;
using System.Text.Json.Nodes;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Vessels;
using WeldTrace.Persistence;
using WeldTrace.Persistence.LedgerStore;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Systems.Histories;

/// <summary>Reads a vessel for another system.</summary>
public sealed class HistoryReader(
    IDbContextFactory<WeldTraceDbContext> contexts,
    SiteReader sites,
    TimeProvider clock
)
{
    /// <summary>Name and version of the form of a history.</summary>
    public const string Format = "weldtrace-history-1";

    /// <summary>The state of a vessel; null when there is none of that serial.</summary>
    public async Task<VesselStanding?> StandingAsync(string serial, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var vessel = await db
            .Vessels.AsNoTracking()
            .SingleOrDefaultAsync(v => v.Serial == serial, cancellation);
        if (vessel is null)
        {
            return null;
        }

        var open = await db
            .Findings.AsNoTracking()
            .Where(f => f.VesselId == vessel.Id && f.State != FindingState.Closed)
            .OrderBy(f => f.Number)
            .ToListAsync(cancellation);
        return new VesselStanding(
            vessel.Serial,
            vessel.DesignLabel,
            vessel.ProductionLot,
            Vessel.StateWord(vessel.State),
            StepStanding.Of(vessel.NextStep),
            [.. open.Select(f => f.Label)],
            vessel.Shipment?.Consignee
        );
    }

    /// <summary>Everything that is recorded of a vessel, of one moment; null when there is none of that serial.</summary>
    public async Task<VesselHistoryAnswer?> HistoryAsync(
        string serial,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db
            .Database.CreateExecutionStrategy()
            .ExecuteAsync(token => ReadAsync(db, serial, token), cancellation);
    }

    private async Task<VesselHistoryAnswer?> ReadAsync(
        WeldTraceDbContext db,
        string serial,
        CancellationToken cancellation
    )
    {
        await using var snapshot = await db.Database.BeginSnapshotAsync(cancellation);
        if (await db.FindVesselHistoryAsync(serial, cancellation) is not { } history)
        {
            return null;
        }

        var records = await db.LoadRecordsBehindAsync(history, cancellation);
        var ledger = await db.ReadLedgerAsync([.. records.Select(r => r.Id)], cancellation);
        return new VesselHistoryAnswer(
            Format,
            history.Vessel.Serial,
            (await sites.GetAsync(cancellation)).Name,
            clock.GetUtcNow(),
            ledger.Size,
            Convert.ToHexStringLower(ledger.Root),
            [.. records.Select(r => JsonNode.Parse(RecordSnapshot.Of(r))!)],
            [.. ledger.Entries.Select(Answer)]
        );
    }

    private static ProvedEntryAnswer Answer(ProvedEntry proved) =>
        new(
            JsonNode.Parse(Encoding.UTF8.GetString(proved.Entry.ToCanonicalBytes()))!,
            [.. proved.Path.Select(Convert.ToHexStringLower)]
        );
}
