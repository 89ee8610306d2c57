using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Archiving;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Archive.ArchiveVessel;

public sealed class ArchiveForm
{
    public Guid Id { get; set; }

    /// <summary>Hash of the bundle as it was shown.</summary>
    public string? Hash { get; set; }

    public string? Password { get; set; }
}

/// <summary>First the bundle is written and verified; then, signed, what it holds leaves the database.</summary>
public sealed class ArchiveHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    ArchiveReader reader,
    BundleDraft draft,
    PasswordCheck passwords,
    SiteDay day,
    TimeProvider clock
)
{
    public const string Meaning =
        "The bundle holds the whole history of this vessel and verifies; its process logs and files may leave the database.";

    public async Task<Outcome> WriteBundleAsync(
        string serial,
        Uri site,
        Actor actor,
        CancellationToken cancellation
    )
    {
        if (RoleRules.Require(actor, VesselArchive.Archivist) is { } refusal)
        {
            return Outcome.From([refusal]);
        }

        if (await reader.FindAsync(serial, cancellation) is not { } view)
        {
            return NoVessel(serial);
        }

        var against = view.Retention.Against(await day.TodayAsync(cancellation));
        return against.Count > 0
            ? Outcome.From(against)
            : await draft.WriteAsync(view, site, actor, cancellation);
    }

    public async Task<Outcome> ArchiveAsync(
        string serial,
        ArchiveForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var proved = await passwords.ForSignatureAsync(actor, form.Password, cancellation);
        if (!proved.IsAccepted)
        {
            return proved;
        }

        if (await reader.FindAsync(serial, cancellation) is not { } view)
        {
            return NoVessel(serial);
        }

        if (view.Archives.Any(a => a.Id == form.Id))
        {
            return Outcome.Accepted;
        }

        var verified = await draft.VerifyAsync(view.Vessel.Id, cancellation);
        if (!verified.IsAccepted)
        {
            return verified.WithoutValue();
        }

        if (verified.Value.Bundle.Hash != form.Hash)
        {
            return Outcome.Refused(
                "bundle",
                "The bundle is not the one that was shown. Look at it as it is now, then sign."
            );
        }

        form.Id = FormIdentity.OrNew(form.Id, clock);
        var at = clock.GetUtcNow();
        var archive = VesselArchive.Write(
            form.Id,
            view.Vessel,
            view.Retention,
            verified.Value,
            view.Contents,
            view.LastEntry,
            await day.TodayAsync(cancellation),
            actor,
            at
        );
        return archive.IsAccepted
            ? await SaveAsync(archive.Value, actor, at)
            : archive.WithoutValue();
    }

    // The bundle bears its last name before the transaction begins: once that has ended, nothing is left to be done. Whoever
    // leaves the page does not break it off.
    private async Task<Outcome> SaveAsync(VesselArchive archive, Actor actor, DateTimeOffset at)
    {
        draft.Keep(archive.VesselId, archive.Id);
        await using var db = await contexts.CreateDbContextAsync();
        db.AddRange(archive, Signature.Of(archive, actor, Meaning, at));
        var saved = await db.SaveAsync(CancellationToken.None);
        if (!saved.IsAccepted)
        {
            draft.GiveBack(archive.Id, archive.VesselId);
        }

        return saved;
    }

    private static Outcome NoVessel(string serial) =>
        Outcome.Refused("vessel", $"There is no vessel {serial}.");
}
