using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Persistence;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Tools.Designs;

public sealed class ToolDesignForm
{
    public string? Number { get; set; }

    public string? ShoulderDiameter { get; set; }

    public string? PinDiameter { get; set; }

    public string? PinLength { get; set; }

    public string? Material { get; set; }

    public string? LifeLimit { get; set; }

    public string? LifeEvidence { get; set; }

    public bool HasSeparateParts { get; set; }

    public string? ShoulderLifeLimit { get; set; }
}

/// <summary>Enters tool drawings; a number that exists gets its next revision.</summary>
public sealed class ToolDesignHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    TimeProvider clock
)
{
    public async Task<Outcome<ToolDesign>> HandleAsync(
        ToolDesignForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        List<Refusal> refusals = [];
        if (Geometry(form, refusals) is not { } geometry)
        {
            return refusals;
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var number = form.Number?.Trim() ?? "";
        var last =
            await db
                .ToolDesigns.Where(d => d.Number == number)
                .MaxAsync(d => (int?)d.RevisionIndex, cancellation)
            ?? 0;
        var design = ToolDesign.Enter(number, last + 1, geometry, actor, clock.GetUtcNow());
        if (!design.IsAccepted)
        {
            return design;
        }

        db.Add(design.Value);
        var saved = await db.SaveAsync(cancellation);
        return saved.IsAccepted ? design : saved.Refusals.ToList();
    }

    private static ToolGeometry? Geometry(ToolDesignForm form, List<Refusal> refusals)
    {
        var shoulder = Typed.Number(
            form.ShoulderDiameter,
            "Shoulder diameter",
            nameof(form.ShoulderDiameter),
            refusals
        );
        var pin = Typed.Number(
            form.PinDiameter,
            "Pin diameter",
            nameof(form.PinDiameter),
            refusals
        );
        var length = Typed.Number(form.PinLength, "Pin length", nameof(form.PinLength), refusals);
        var life = Typed.Number(form.LifeLimit, "Life", nameof(form.LifeLimit), refusals);
        var shoulderLife = string.IsNullOrWhiteSpace(form.ShoulderLifeLimit)
            ? null
            : Typed.Number(
                form.ShoulderLifeLimit,
                "Life of the shoulder",
                nameof(form.ShoulderLifeLimit),
                refusals
            );
        if (refusals.Count > 0 || shoulder is null || pin is null || length is null || life is null)
        {
            return null;
        }

        return new ToolGeometry(
            Length.FromMillimetres((double)shoulder.Value),
            Length.FromMillimetres((double)pin.Value),
            Length.FromMillimetres((double)length.Value),
            form.Material?.Trim() ?? "",
            Length.FromMetres((double)life.Value),
            form.LifeEvidence?.Trim() ?? "",
            form.HasSeparateParts ? true : null,
            shoulderLife is { } metres ? Length.FromMetres((double)metres) : null
        );
    }
}
