using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Attachments;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Files;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Equipment.ShowInstrument;

public sealed class CalibrateForm
{
    public DateOnly? On { get; set; }

    public string? Laboratory { get; set; }

    public string? CertificateNumber { get; set; }

    public string? AsFoundError { get; set; }

    public IFormFile? File { get; set; }
}

public sealed class WithdrawInstrumentForm
{
    public string? Reason { get; set; }
}

/// <summary>Shows an instrument, enters its calibrations and takes it out of use.</summary>
public sealed class InstrumentHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    SiteDay day,
    TimeProvider clock
)
{
    private static readonly Outcome Missing = Outcome.Refused(
        "instrument",
        "There is no such instrument."
    );

    public async Task<Instrument?> FindAsync(Guid id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db
            .Instruments.AsNoTracking()
            .SingleOrDefaultAsync(i => i.Id == id, cancellation);
    }

    /// <summary>What rests on it and must be looked at again; empty unless it was found out of tolerance.</summary>
    public async Task<IReadOnlyList<MeasuredWith>> ToReviewAsync(
        Instrument instrument,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(instrument);
        if (instrument.Latest is not { IsWithinLimit: false })
        {
            return [];
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db.LoadMeasuredWithAsync(
            instrument.Id,
            instrument.LastGoodBeforeLatest,
            cancellation
        );
    }

    public async Task<Outcome> CalibrateAsync(
        Guid id,
        CalibrateForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var instrument = await db.Instruments.SingleOrDefaultAsync(i => i.Id == id, cancellation);
        if (instrument is null)
        {
            return Missing;
        }

        var (error, file, refusals) = await ReadAsync(form, instrument.Text.Unit, cancellation);
        if (refusals.Count > 0)
        {
            return Outcome.From(refusals);
        }

        var at = clock.GetUtcNow();
        var outcome = instrument.Calibrate(
            form.On!.Value,
            form.Laboratory ?? "",
            form.CertificateNumber ?? "",
            file?.Sha256,
            error,
            await day.TodayAsync(cancellation),
            actor,
            at
        );
        if (!outcome.IsAccepted)
        {
            return outcome;
        }

        var asked = await CalibrationFindings.AddAsync(db, instrument, actor, at, cancellation);
        if (!asked.IsAccepted)
        {
            return asked;
        }

        if (file is not null)
        {
            await db.KeepAsync(file, cancellation);
        }

        return await db.SaveAsync(cancellation);
    }

    private static async Task<(Measured, Attachment?, List<Refusal>)> ReadAsync(
        CalibrateForm form,
        string unit,
        CancellationToken cancellation
    )
    {
        var entries = new Entries();
        var error = entries.Number(
            form.AsFoundError,
            unit,
            "Largest error found",
            nameof(form.AsFoundError)
        );
        List<Refusal> refusals = [.. entries.Refusals];
        if (form.On is null)
        {
            refusals.Add(new("day", "Give the day of the calibration.", nameof(form.On)));
        }

        var file = await PaperReader.ReadOptionalAsync(
            form.File,
            nameof(form.File),
            refusals,
            cancellation
        );
        return (error, file, refusals);
    }

    public async Task<Outcome> WithdrawAsync(
        Guid id,
        WithdrawInstrumentForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var instrument = await db.Instruments.SingleOrDefaultAsync(i => i.Id == id, cancellation);
        if (instrument is null)
        {
            return Missing;
        }

        var outcome = instrument.Withdraw(form.Reason ?? "", actor, clock.GetUtcNow());
        return outcome.IsAccepted ? await db.SaveAsync(cancellation) : outcome;
    }
}
