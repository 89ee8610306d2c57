using Microsoft.EntityFrameworkCore;
using WeldTrace.Documents;
using WeldTrace.Documents.TestReports;
using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Engineering.Conformity;
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

    /// <summary>What keeps the paper of a test from being a certificate; nothing for a signed pass.</summary>
    public static IEnumerable<string> Notices(TestRecord test)
    {
        ArgumentNullException.ThrowIfNull(test);
        if (test.Withdrawal is { } withdrawal)
        {
            yield return $"This test was withdrawn by {withdrawal.PrintedName}: {withdrawal.Reason}";
        }
        else if (test.SignedAt is null)
        {
            yield return "This test is not signed yet.";
        }

        foreach (var notice in Notices(test.Verdict))
        {
            yield return notice;
        }
    }

    /// <summary>What a verdict says against a certificate; nothing for a pass.</summary>
    public static IEnumerable<string> Notices(Verdict? verdict)
    {
        if (verdict != Verdict.Pass)
        {
            yield return verdict switch
            {
                Verdict.Undecided => "The verdict is undecided. An undecided test is not a pass.",
                Verdict.Fail => "The test failed.",
                _ => "The test is not finished.",
            };
        }
    }

    /// <summary>A verdict in words, in which nobody takes an undecided one for a pass.</summary>
    public static StateMark Mark(Verdict? verdict) =>
        PrintedMarks.Of(
            DomainMarks.Of(verdict),
            verdict == Verdict.Undecided ? "undecided, not a pass" : TestRecord.VerdictWord(verdict)
        );

    /// <summary>The instruments of a test with what is known of their calibration.</summary>
    public static async Task<ReportTable> InstrumentsAsync(
        this WeldTraceDbContext db,
        IReadOnlyList<UsedInstrument>? used,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        var ids = (used ?? []).Select(u => u.Id).ToList();
        var known = await db
            .Instruments.AsNoTracking()
            .Where(i => ids.Contains(i.Id))
            .ToListAsync(cancellation);
        return Instruments(used, known);
    }

    /// <summary>The instruments of a test with what is known of their calibration.</summary>
    public static ReportTable Instruments(
        IReadOnlyList<UsedInstrument>? used,
        IReadOnlyList<Instrument> known
    ) =>
        new(
            "Instruments",
            ["Mark", "What", "Calibration valid until", "Calibration certificate"],
            [
                .. (used ?? []).Select(u =>
                {
                    var instrument = known.FirstOrDefault(i => i.Id == u.Id);
                    var calibration = instrument?.Calibrations.LastOrDefault(c =>
                        c.DueOn == u.CalibratedUntil
                    );
                    return (IReadOnlyList<string>)
                        [
                            u.Mark,
                            instrument?.Text.Description ?? InstrumentRules.Word(u.Measures),
                            FormattableString.Invariant($"{u.CalibratedUntil:yyyy-MM-dd}"),
                            calibration is null
                                ? "–"
                                : $"{calibration.CertificateNumber}, {calibration.Laboratory}",
                        ];
                }),
            ]
        )
        {
            IsNumeric = false,
        };

    /// <summary>Those who had to do with a test.</summary>
    /// <param name="rows">Name, what the person did, and certificate of each.</param>
    public static ReportTable People(params IReadOnlyList<IReadOnlyList<string>> rows) =>
        new("People", ["Name", "What", "Certificate"], rows) { IsNumeric = false };

    /// <summary>Somebody who tested, with the certificate that covered the method on the day.</summary>
    public static async Task<IReadOnlyList<string>> PersonAsync(
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
        return
        [
            name,
            did,
            covering is null
                ? "none on record"
                : FormattableString.Invariant(
                    $"{covering.Number}, level {covering.Text.Examiner!.Level}, valid until {covering.EndsOn:yyyy-MM-dd}"
                ),
        ];
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
