using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Features.Material;

public sealed class MaterialLotForm
{
    public string? Number { get; set; }

    public string? Alloy { get; set; }

    public string? Temper { get; set; }

    public string? CastNumber { get; set; }

    public string? Form { get; set; }

    public string? CertificateNumber { get; set; }
}

/// <summary>Enters material lots and shows where each went.</summary>
public sealed class MaterialHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    TimeProvider clock
)
{
    public async Task<IReadOnlyList<MaterialLot>> AllAsync(CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db
            .MaterialLots.AsNoTracking()
            .OrderByDescending(l => l.Number)
            .ToListAsync(cancellation);
    }

    public async Task<(MaterialLot Lot, IReadOnlyList<Vessel> Vessels)?> FindAsync(
        Guid id,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var lot = await db
            .MaterialLots.AsNoTracking()
            .SingleOrDefaultAsync(l => l.Id == id, cancellation);
        if (lot is null)
        {
            return null;
        }

        var part = $$"""[{"materialLotId":"{{id:D}}"}]""";
        var vessels = await db
            .Vessels.FromSql($"SELECT * FROM vessels WHERE components @> {part}::jsonb")
            .AsNoTracking()
            .OrderBy(v => v.Serial)
            .ToListAsync(cancellation);
        return (lot, vessels);
    }

    public async Task<Outcome<MaterialLot>> EnterAsync(
        MaterialLotForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var lot = MaterialLot.Enter(
            form.Number ?? "",
            form.Alloy ?? "",
            form.Temper ?? "",
            form.CastNumber ?? "",
            form.Form ?? "",
            form.CertificateNumber ?? "",
            actor,
            clock.GetUtcNow()
        );
        if (!lot.IsAccepted)
        {
            return lot;
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        db.Add(lot.Value);
        var saved = await db.SaveAsync(cancellation);
        return saved.IsAccepted
            ? lot
            : saved
                .Refusals.Select(r =>
                    r.Code == "exists" ? r with { Field = nameof(form.Number) } : r
                )
                .ToList();
    }
}
