using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Persistence;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Designs.Show;

public sealed class ReleaseDesignForm
{
    public string? Password { get; set; }
}

public sealed class ReviseDesignForm
{
    public string? Reason { get; set; }
}

/// <summary>Releases a design revision, signed by a second person, or makes the next revision from it.</summary>
public sealed class ReleaseDesignHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    PasswordCheck passwords,
    TimeProvider clock
)
{
    public const string Meaning = "I release this design for production.";

    private static readonly Refusal Missing = new("design", "There is no such design revision.");

    public async Task<Outcome> ReleaseAsync(
        Guid id,
        ReleaseDesignForm form,
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

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var design = await db.VesselDesigns.SingleOrDefaultAsync(d => d.Id == id, cancellation);
        if (design is null)
        {
            return Outcome.From([Missing]);
        }

        var earlier = await db.VesselDesigns.SingleOrDefaultAsync(
            d => d.Number == design.Number && d.State == DesignState.Released,
            cancellation
        );
        var at = clock.GetUtcNow();
        var outcome = design.Release(earlier, actor, at);
        if (!outcome.IsAccepted)
        {
            return outcome;
        }

        db.Add(Signature.Of(design, actor, Meaning, at));
        return await db.SaveAsync(cancellation);
    }

    public async Task<Outcome<VesselDesign>> ReviseAsync(
        Guid id,
        ReviseDesignForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var design = await db
            .VesselDesigns.AsNoTracking()
            .SingleOrDefaultAsync(d => d.Id == id, cancellation);
        if (design is null)
        {
            return Missing;
        }

        var last = await db
            .VesselDesigns.Where(d => d.Number == design.Number)
            .MaxAsync(d => d.RevisionIndex, cancellation);
        var next = design.Revise(last + 1, form.Reason ?? "", actor, clock.GetUtcNow());
        if (!next.IsAccepted)
        {
            return next;
        }

        db.Add(next.Value);
        var saved = await db.SaveAsync(cancellation);
        return saved.IsAccepted ? next : saved.Refusals.ToList();
    }
}
