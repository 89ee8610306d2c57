using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;

namespace WeldTrace.Persistence.Loading;

/// <summary>A record that rests on what an instrument showed.</summary>
/// <param name="Record">The record.</param>
/// <param name="At">UTC instant of the measurement.</param>
/// <param name="VesselId">Vessel that was measured; null for a tool or a test piece.</param>
/// <param name="StepSequence">Step at which it was; null where none is known.</param>
public sealed record MeasuredWith(
    Record Record,
    DateTimeOffset At,
    Guid? VesselId = null,
    int? StepSequence = null
);

public static class MeasuredWithLoading
{
    /// <summary>Everything that was measured with an instrument since a day, oldest first.</summary>
    /// <param name="db">Where the records are.</param>
    /// <param name="instrument">Instrument.</param>
    /// <param name="since">First day; null for everything.</param>
    /// <param name="cancellation">Ends the reading.</param>
    public static async Task<IReadOnlyList<MeasuredWith>> LoadMeasuredWithAsync(
        this WeldTraceDbContext db,
        Guid instrument,
        DateOnly? since,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        var from = new DateTimeOffset(
            (since ?? DateOnly.MinValue).ToDateTime(TimeOnly.MinValue),
            TimeSpan.Zero
        );
        var fitUps = await db
            .JointFitUps.AsNoTracking()
            .Where(f => f.InstrumentId == instrument && f.MeasuredAt >= from)
            .ToListAsync(cancellation);
        var specimens = await db
            .SpecimenTests.AsNoTracking()
            .Where(t => t.SignedAt >= from)
            .ToListAsync(cancellation);
        var laboratory = await db
            .LaboratoryTests.AsNoTracking()
            .Where(t => t.SignedAt >= from)
            .ToListAsync(cancellation);
        var tools = await db.Tools.AsNoTracking().ToListAsync(cancellation);
        return
        [
            .. (
                (IEnumerable<MeasuredWith>)
                    [
                        .. await TestsAsync(db.LeakTests, instrument, from, cancellation),
                        .. await TestsAsync(db.PressureTests, instrument, from, cancellation),
                        .. await TestsAsync(db.Sections, instrument, from, cancellation),
                        .. fitUps.Select(f => new MeasuredWith(f, f.MeasuredAt, f.VesselId)),
                        .. specimens
                            .Where(t => t.Instrument?.Id == instrument)
                            .Select(t => new MeasuredWith(t, t.SignedAt)),
                        .. laboratory
                            .Where(t => t.Instruments.Any(i => i.Id == instrument))
                            .Select(t => new MeasuredWith(t, t.SignedAt, t.VesselId)),
                        .. tools.SelectMany(t =>
                            (t.Inspections ?? [])
                                .Where(i => i.Measured?.InstrumentId == instrument && i.At >= from)
                                .Select(i => new MeasuredWith(t, i.At))
                        ),
                    ]
            ).OrderBy(m => m.At),
        ];
    }

    private static async Task<IEnumerable<MeasuredWith>> TestsAsync<T>(
        DbSet<T> tests,
        Guid instrument,
        DateTimeOffset from,
        CancellationToken cancellation
    )
        where T : TestRecord
    {
        var since = await tests
            .AsNoTracking()
            .Where(t => t.TestedAt >= from && t.Withdrawal == null)
            .ToListAsync(cancellation);
        return since
            .Where(t => t.Instruments?.Any(i => i.Id == instrument) == true)
            .Select(t => new MeasuredWith(t, t.TestedAt, t.VesselId, t.StepSequence));
    }
}
