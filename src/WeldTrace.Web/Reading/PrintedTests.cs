using Microsoft.EntityFrameworkCore;
using WeldTrace.Documents;
using WeldTrace.Documents.LaboratoryReports;
using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Reading;

/// <summary>What the reports of all tests print in the same way.</summary>
public static class PrintedTests
{
    public static string Show(this DocumentStamp stamp, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(stamp);
        return TimeZoneInfo
            .ConvertTime(at, stamp.TimeZone)
            .ToString("yyyy-MM-dd HH:mm", System.Globalization.CultureInfo.InvariantCulture);
    }

    public static DateOnly DayOf(this DocumentStamp stamp, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(stamp);
        return DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(at, stamp.TimeZone).DateTime);
    }

    public static IReadOnlyList<ReportInstrument> Instruments(
        IReadOnlyList<UsedInstrument>? used
    ) =>
        [
            .. (used ?? []).Select(i => new ReportInstrument(
                i.Mark,
                InstrumentRules.Word(i.Measures),
                FormattableString.Invariant($"{i.CalibratedUntil:yyyy-MM-dd}")
            )),
        ];

    /// <summary>Somebody who tested, with the certificate that covered the method on the day.</summary>
    public static async Task<ReportPerson> ReportPersonAsync(
        this WeldTraceDbContext db,
        Guid personId,
        string name,
        string did,
        ExaminationMethod method,
        DateOnly day,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        var certificates = await db
            .Certificates.AsNoTracking()
            .Where(c => c.PersonId == personId)
            .ToListAsync(cancellation);
        var covering = certificates
            .Where(c => c.Text.Examiner?.Method == method && c.Text.TestedOn <= day)
            .OrderByDescending(c => c.EndsOn)
            .FirstOrDefault();
        return new ReportPerson(
            name,
            did,
            covering is null
                ? "none on record"
                : FormattableString.Invariant(
                    $"{covering.Number}, level {covering.Text.Examiner!.Level}, valid until {covering.EndsOn:yyyy-MM-dd}"
                )
        );
    }

    /// <summary>The signatures under a record, oldest first.</summary>
    public static async Task<IReadOnlyList<SignatureEntry>> SignatureEntriesAsync(
        this WeldTraceDbContext db,
        Record record,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(record);
        var signatures = await db
            .Signatures.AsNoTracking()
            .Where(s => s.SignedId == record.Id)
            .OrderBy(s => s.At)
            .ToListAsync(cancellation);
        return
        [
            .. signatures.Select(s => new SignatureEntry(
                s.PrintedName,
                s.Meaning,
                s.At,
                FormattableString.Invariant($"{record.Label}, version {s.SignedVersion}"),
                s.SignedSha256
            )),
        ];
    }
}
