using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sectioning;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Testing.MeasureSection;

/// <summary>A section with the limits that it is judged by.</summary>
public sealed record MeasuredSection(SectionExamination Section, LimitTable Table);

public sealed class MeasureSectionHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    TimeProvider clock
)
{
    public async Task<MeasuredSection?> FindAsync(Guid id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await FindAsync(db, id, cancellation);
    }

    public Task<Outcome> SetScaleAsync(
        Guid id,
        ScaleForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        List<Refusal> refusals = [];
        var setUp = form.Read(new Entries(), refusals);
        return DoAsync(
            id,
            refusals,
            (found, at) => found.Section.SetScale(setUp, form.Reason, actor, at),
            cancellation
        );
    }

    public Task<Outcome> MeasureAsync(
        Guid id,
        MarkForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        List<Refusal> refusals = [];
        var entries = new Entries();
        var replaced = entries.OptionalWhole(
            form.Replaces,
            "numbers",
            "Replaces",
            nameof(form.Replaces)
        );
        var entry = form.Read(entries, refusals);
        return DoAsync(
            id,
            refusals,
            (found, at) =>
                replaced is { } number
                    ? found.Section.Correct(number, entry, found.Table, form.Reason, actor, at)
                    : found.Section.Measure(entry, found.Table, actor, at),
            cancellation
        );
    }

    public Task<Outcome> StrikeAsync(
        Guid id,
        StrikeForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var entries = new Entries();
        var number = entries.Whole(form.Number, "numbers", "Measurement", nameof(form.Number));
        return DoAsync(
            id,
            entries.Refusals,
            (found, at) => found.Section.Correct(number, null, found.Table, form.Reason, actor, at),
            cancellation
        );
    }

    public Task<Outcome> ConcludeAsync(
        Guid id,
        ConcludeForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        return DoAsync(
            id,
            [],
            (found, at) => found.Section.Conclude(form.Seen, actor, at),
            cancellation
        );
    }

    private async Task<Outcome> DoAsync(
        Guid id,
        IReadOnlyList<Refusal> unread,
        Func<MeasuredSection, DateTimeOffset, Outcome> act,
        CancellationToken cancellation
    )
    {
        if (unread.Count > 0)
        {
            return Outcome.From(unread);
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        if (await FindAsync(db, id, cancellation) is not { } found)
        {
            return Outcome.Refused(
                "missing",
                "There is no such section. Look for it in the list of tests."
            );
        }

        var outcome = act(found, clock.GetUtcNow());
        return outcome.IsAccepted ? await db.SaveAsync(cancellation) : outcome;
    }

    // Sections of the time before pictures were measured have no limits of their own and are not found here.
    private static async Task<MeasuredSection?> FindAsync(
        WeldTraceDbContext db,
        Guid id,
        CancellationToken cancellation
    )
    {
        var section = await db.Sections.SingleOrDefaultAsync(s => s.Id == id, cancellation);
        return section?.Standards is { } standards
            ? new MeasuredSection(
                section,
                await db.LimitTables.SingleAsync(t => t.Id == standards.Limits.Id, cancellation)
            )
            : null;
    }
}
