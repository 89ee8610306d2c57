using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Web.Acts;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Material.Components;

public sealed class EnterComponentsForm
{
    public string? Serials { get; set; }

    public string? PartKind { get; set; }

    public Guid? Lot { get; set; }

    public string? MadeBy { get; set; }

    public DateOnly? MadeOn { get; set; }

    public IReadOnlyList<string> Lines =>
        (Serials ?? "").Split(
            ['\n', '\r', ',', ';'],
            StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries
        );
}

public sealed class ScrapComponentForm
{
    public string? Reason { get; set; }
}

/// <summary>Enters components of one kind, cut from one lot, all or none; scraps one.</summary>
public sealed class EnterComponentsHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    ActDesk desk,
    SiteDay day,
    TimeProvider clock
)
{
    /// <summary>Most components entered at once.</summary>
    public const int MostAtOnce = 100;

    public async Task<Outcome> HandleAsync(
        EnterComponentsForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var lot = await db
            .MaterialLots.AsNoTracking()
            .SingleOrDefaultAsync(l => l.Id == form.Lot, cancellation);
        var entries = new Entries();
        var madeOn = entries.Day(
            form.MadeOn,
            "the day on which they were made",
            nameof(form.MadeOn)
        );
        List<Refusal> refusals =
        [
            .. entries.Refusals,
            .. AgainstLines(form),
            .. await TakenAsync(db, form.Lines, cancellation),
        ];
        if (lot is null)
        {
            refusals.Add(new("lot", "Choose the lot that they were cut from.", nameof(form.Lot)));
        }

        if (refusals.Count > 0)
        {
            return Outcome.From(refusals);
        }

        var (today, at) = (await day.TodayAsync(cancellation), clock.GetUtcNow());
        var entered = form
            .Lines.Select(serial =>
                CutComponent.Enter(
                    serial,
                    form.PartKind ?? "",
                    lot!,
                    form.MadeBy ?? "",
                    madeOn,
                    today,
                    actor,
                    at
                )
            )
            .ToList();
        refusals.AddRange(entered.SelectMany(e => e.Refusals).Distinct().Select(AtField));
        if (refusals.Count > 0)
        {
            return Outcome.From(refusals);
        }

        db.AddRange(entered.Select(e => e.Value!));
        return await db.SaveAsync(cancellation);
    }

    public Task<Outcome> ScrapAsync(
        Guid id,
        ScrapComponentForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        return desk.DoAsync(
            PostedAct.On<CutComponent>(id, m => m.Record.Scrap(form.Reason ?? "", actor, m.At)),
            actor,
            cancellation
        );
    }

    private static IEnumerable<Refusal> AgainstLines(EnterComponentsForm form)
    {
        if (form.Lines.Count is 0 or > MostAtOnce)
        {
            yield return new(
                "serials",
                $"Give 1 to {MostAtOnce} serials, one a line.",
                nameof(form.Serials)
            );
        }

        foreach (var twice in form.Lines.GroupBy(l => l).Where(g => g.Count() > 1))
        {
            yield return new(
                "serials",
                $"{twice.Key} stands in the list twice; a serial is given once.",
                nameof(form.Serials)
            );
        }
    }

    private static async Task<IEnumerable<Refusal>> TakenAsync(
        WeldTraceDbContext db,
        IReadOnlyList<string> serials,
        CancellationToken cancellation
    )
    {
        var taken = await db
            .Components.Where(c => serials.Contains(c.Serial))
            .Select(c => c.Serial)
            .ToListAsync(cancellation);
        return taken.Select(serial => new Refusal(
            "exists",
            $"{serial} is entered already; a serial is given once.",
            nameof(EnterComponentsForm.Serials)
        ));
    }

    private static Refusal AtField(Refusal refusal) =>
        refusal.Field == nameof(CutComponent.Serial)
            ? refusal with
            {
                Field = nameof(EnterComponentsForm.Serials),
            }
            : refusal;
}
