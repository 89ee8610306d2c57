using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Acts;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Findings.Contain;

/// <summary>A finding with the vessels that may be affected too.</summary>
public sealed record ContainmentView(
    Finding Finding,
    ContainmentQuery Query,
    IReadOnlyList<SharingVessel> Rows,
    int Total
);

/// <summary>Looks for vessels that may be affected too, and holds them.</summary>
public sealed class ContainHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    SiteReader sites,
    ActDesk desk
)
{
    public static readonly IReadOnlyList<string> SortKeys = ["serial", "state"];

    private static readonly char[] Separators = [' ', ',', ';', '\r', '\n', '\t'];

    public async Task<ContainmentView?> FindAsync(
        Guid id,
        TableQuery query,
        bool whole,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(query);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var finding = await db
            .Findings.AsNoTracking()
            .SingleOrDefaultAsync(f => f.Id == id, cancellation);
        if (finding is null)
        {
            return null;
        }

        var asked = await ReadAsync(db, finding, query, cancellation);
        var site = await sites.GetAsync(cancellation);
        var found = db.SharingWith(
            finding.VesselId,
            asked.Shared,
            asked.Begins(site),
            asked.Ends(site)
        );
        var sorted = (query.Sort, query.Descending) switch
        {
            ("state", false) => found.OrderBy(v => v.State).ThenBy(v => v.Serial),
            ("state", true) => found.OrderByDescending(v => v.State).ThenBy(v => v.Serial),
            ("serial", true) => found.OrderByDescending(v => v.Serial),
            _ => found.OrderBy(v => v.Serial),
        };
        var rows = await (
            whole ? sorted : sorted.Skip(query.Skip).Take(query.PageSize)
        ).ToListAsync(cancellation);
        return new ContainmentView(
            finding,
            asked,
            rows,
            rows.Count > 0 ? (int)rows[0].Total : await found.CountAsync(cancellation)
        );
    }

    public Task<Outcome> HoldAsync(
        Guid id,
        TableQuery query,
        ContainForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        return desk.DoAsync(
            new PostedAct<Finding>(
                id,
                (moment, token) => HoldAsync(moment, query, form, actor, token)
            )
            {
                Meaning = Finding.ContainmentMeaning,
                Password = form.Password,
            },
            actor,
            cancellation
        );
    }

    private async Task<Outcome> HoldAsync(
        ActMoment<Finding> moment,
        TableQuery query,
        ContainForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        var (db, finding) = (moment.Db, moment.Record);
        var asked = await ReadAsync(db, finding, query, cancellation);
        var site = await sites.GetAsync(cancellation);
        var found = await db.SharingWith(
                finding.VesselId,
                asked.Shared,
                asked.Begins(site),
                asked.Ends(site)
            )
            .ToListAsync(cancellation);
        var typed = (form.Serials ?? "")
            .Split(Separators, StringSplitOptions.RemoveEmptyEntries)
            .ToHashSet();
        var unlisted = typed.Except(found.Select(v => v.Serial)).Order().ToList();
        if (unlisted.Count > 0)
        {
            return Outcome.Refused(
                "serial",
                $"Not in the list: {string.Join(", ", unlisted)}. Check the serials, or search wider.",
                nameof(form.Serials)
            );
        }

        var vessels = await ToHoldAsync(
            db,
            finding,
            [.. found.Where(v => form.HoldAll || typed.Contains(v.Serial)).Select(v => v.VesselId)],
            form.HoldAll,
            cancellation
        );
        var contained = finding.Contain(
            new ContainmentSearch(
                asked.Shared,
                asked.From,
                asked.Until,
                found.Count,
                form.Reason ?? ""
            ),
            vessels,
            actor,
            moment.At
        );
        if (contained.IsAccepted)
        {
            db.AddRange(contained.Value);
        }

        return contained.WithoutValue();
    }

    // Whoever holds all means all that can be held, and each of them once.
    private static async Task<IReadOnlyList<Vessel>> ToHoldAsync(
        WeldTraceDbContext db,
        Finding finding,
        List<Guid> ids,
        bool all,
        CancellationToken cancellation
    )
    {
        var held = await db
            .Findings.Where(f => f.EvidenceId == finding.Id)
            .Select(f => f.VesselId)
            .ToListAsync(cancellation);
        var vessels = await db
            .Vessels.Where(v => ids.Contains(v.Id) && !held.Contains(v.Id))
            .OrderBy(v => v.Serial)
            .ToListAsync(cancellation);
        return all ? [.. vessels.Where(v => !v.IsFinal)] : vessels;
    }

    private async Task<ContainmentQuery> ReadAsync(
        WeldTraceDbContext db,
        Finding finding,
        TableQuery query,
        CancellationToken cancellation
    )
    {
        var site = await sites.GetAsync(cancellation);
        var starts = await db
            .WeldRuns.Where(r => r.VesselId == finding.VesselId)
            .Select(r => r.StartedAt)
            .ToListAsync(cancellation);
        return ContainmentQuery.Read(
            query,
            SiteDay.Of(site, starts.DefaultIfEmpty(finding.OpenedAt).Min()),
            SiteDay.Of(site, starts.DefaultIfEmpty(finding.OpenedAt).Max())
        );
    }
}
