using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Components.Figures;

namespace WeldTrace.Web.Features.Welding.InterruptRun;

/// <summary>Ends a run before its planned path: charges what was travelled and holds the vessel.</summary>
public sealed class InterruptRunHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    TimeProvider clock
)
{
    /// <summary>The run; null when there is none.</summary>
    public async Task<WeldRun?> FindAsync(Guid id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db.WeldRuns.AsNoTracking().SingleOrDefaultAsync(r => r.Id == id, cancellation);
    }

    public async Task<Outcome> HandleAsync(
        Guid id,
        InterruptRunForm form,
        UnitSystem units,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        if (await db.FindRunAsync(id, cancellation) is not { } records)
        {
            return Outcome.Refused("run", "There is no such run.");
        }

        if (Travelled(form.Travelled, units) is not { } travelled)
        {
            return Outcome.Refused(
                "travelled",
                $"Give the length travelled as a number in {SiteUnit.For<Length>(units).Symbol}, for instance 0 when the tool did not travel.",
                nameof(form.Travelled)
            );
        }

        var finding = records.Run.Interrupt(
            travelled,
            form.EndNote ?? "",
            records.Vessel,
            records.Tool,
            actor,
            clock.GetUtcNow()
        );
        if (!finding.IsAccepted)
        {
            return finding.WithoutValue();
        }

        db.Add(finding.Value);
        return await db.SaveAsync(cancellation);
    }

    private static Length? Travelled(string? text, UnitSystem units)
    {
        var unit = SiteUnit.For<Length>(units);
        return Measured.TryRead(text, unit.Symbol, out var measured)
            ? Length.FromSi(unit.ToSi(measured.InUnit()))
            : null;
    }
}
