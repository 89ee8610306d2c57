using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Lots;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Engineering;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Acts;

namespace WeldTrace.Web.Features.Lots.Show;

public sealed class ChooseSamplesForm
{
    // A form sent without any of them arrives as null.
    public List<NamedSampleForm> Named
    {
        get;
        set => field = value ?? [];
    } = [];

    public string? Password { get; set; }
}

public sealed class NamedSampleForm
{
    public SampleKind Kind { get; set; }

    public string? Serial { get; set; }

    public string? Reason { get; set; }
}

public sealed class AcceptLotForm
{
    public string? Password { get; set; }
}

/// <summary>A lot with its vessels, what is shown so far, and the signatures.</summary>
public sealed record LotView(
    ProductionLot Lot,
    VesselDesign Design,
    IReadOnlyList<Vessel> Vessels,
    LotStatement Statement,
    IReadOnlyList<Working> Workings,
    IReadOnlyList<Signature> Signatures
);

/// <summary>Shows a lot; its samples are chosen and it is accepted there.</summary>
public sealed class LotHandler(IDbContextFactory<WeldTraceDbContext> contexts, ActDesk desk)
{
    public async Task<LotView?> FindAsync(Guid id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        db.ChangeTracker.QueryTrackingBehavior = QueryTrackingBehavior.NoTracking;
        if (
            await db.ProductionLots.SingleOrDefaultAsync(l => l.Id == id, cancellation)
            is not { } lot
        )
        {
            return null;
        }

        var (statement, workings) = await db.StateLotAsync(lot, cancellation);
        return new LotView(
            lot,
            await db.VesselDesigns.SingleAsync(d => d.Id == lot.DesignId, cancellation),
            await db.LoadVesselsOfLotAsync(lot, cancellation),
            lot.Acceptance?.Statement ?? statement,
            workings,
            await db
                .Signatures.Where(s => s.SignedId == id)
                .OrderBy(s => s.At)
                .ToListAsync(cancellation)
        );
    }

    public Task<Outcome> ChooseAsync(
        Guid id,
        ChooseSamplesForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var named = form
            .Named.Where(n =>
                !string.IsNullOrWhiteSpace(n.Serial) || !string.IsNullOrWhiteSpace(n.Reason)
            )
            .Select(n => new NamedSample(n.Kind, n.Serial?.Trim() ?? "", n.Reason ?? ""))
            .ToList();
        return desk.DoAsync(
            new PostedAct<ProductionLot>(
                id,
                async (moment, token) =>
                    moment.Record.ChooseSamples(
                        named,
                        await moment.Db.LoadVesselsOfLotAsync(moment.Record, token),
                        await moment.Db.VesselDesigns.SingleAsync(
                            d => d.Id == moment.Record.DesignId,
                            token
                        ),
                        actor,
                        moment.At
                    )
            )
            {
                Meaning = ProductionLot.SamplingMeaning,
                Password = form.Password,
            },
            actor,
            cancellation
        );
    }

    public Task<Outcome> AcceptAsync(
        Guid id,
        AcceptLotForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        return desk.DoAsync(
            new PostedAct<ProductionLot>(
                id,
                async (moment, token) =>
                {
                    var vessels = moment.Record.ConcernedVessels;
                    var weldedBy = await moment
                        .Db.WeldRuns.Where(r => vessels.Contains(r.VesselId))
                        .Select(r => r.OperatorId)
                        .Distinct()
                        .ToListAsync(token);
                    var (statement, _) = await moment.Db.StateLotAsync(moment.Record, token);
                    return moment.Record.Accept(statement, weldedBy, actor, moment.At);
                }
            )
            {
                Meaning = ProductionLot.AcceptanceMeaning,
                Password = form.Password,
            },
            actor,
            cancellation
        );
    }
}
