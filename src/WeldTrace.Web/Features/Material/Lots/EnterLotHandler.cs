using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Attachments;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Files;

namespace WeldTrace.Web.Features.Material.Lots;

public sealed class EnterLotForm : LotDocumentForm
{
    public string? Number { get; set; }

    public string? Alloy { get; set; }

    public string? Temper { get; set; }

    public string? CastNumber { get; set; }

    public string? Form { get; set; }

    public string? CertificateNumber { get; set; }
}

/// <summary>Enters a lot, with its document and results when they are at hand.</summary>
public sealed class EnterLotHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    TimeProvider clock
)
{
    public async Task<Outcome<MaterialLot>> HandleAsync(
        EnterLotForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var entries = new Entries();
        var typed = LotDocumentActs.Read(form, entries);
        List<Refusal> refusals = [];
        var file = await PaperReader.ReadOptionalAsync(
            form.File,
            nameof(form.File),
            refusals,
            cancellation
        );
        refusals.AddRange(entries.Refusals);
        if (refusals.Count > 0)
        {
            return refusals;
        }

        var at = clock.GetUtcNow();
        var lot = MaterialLot.Enter(
            form.Number ?? "",
            form.Alloy ?? "",
            form.Temper ?? "",
            form.CastNumber ?? "",
            form.Form ?? "",
            form.CertificateNumber ?? "",
            actor,
            at
        );
        if (!lot.IsAccepted)
        {
            return lot;
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var filed = await LotDocumentActs.ApplyAsync(
            db,
            lot.Value,
            form,
            typed,
            file?.Sha256,
            actor,
            at,
            cancellation
        );
        return filed.IsAccepted
            ? await SaveAsync(db, lot.Value, file, cancellation)
            : filed.Refusals.ToList();
    }

    private static async Task<Outcome<MaterialLot>> SaveAsync(
        WeldTraceDbContext db,
        MaterialLot lot,
        Attachment? file,
        CancellationToken cancellation
    )
    {
        if (file is not null)
        {
            await db.KeepAsync(file, cancellation);
        }

        db.Add(lot);
        var saved = await db.SaveAsync(cancellation);
        return saved.IsAccepted
            ? lot
            : saved
                .Refusals.Select(r =>
                    r.Code == "exists" ? r with { Field = nameof(EnterLotForm.Number) } : r
                )
                .ToList();
    }
}
