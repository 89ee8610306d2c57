using Microsoft.EntityFrameworkCore;
using WeldTrace.Documents;
using WeldTrace.Documents.Book;
using WeldTrace.Documents.TestReports;
using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering.PressureTesting;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Archives;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Features.Testing.Logs;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Testing.Report;

/// <summary>What the report of a test is printed from.</summary>
internal sealed record ReportSource(
    TestRecord Test,
    VesselDesign Design,
    IReadOnlyList<Signature> Signatures,
    IReadOnlyList<Instrument> Instruments,
    IReadOnlyList<Certificate> Certificates,
    IReadOnlyDictionary<int, IReadOnlyList<TraceSample>> Traces,
    IReadOnlyList<Documents.Photograph> Photographs,
    DocumentStamp Stamp,
    Uri SiteAddress
);

/// <summary>Prints the certificate or report of a leak test or a pressure test.</summary>
public sealed class TestReportReader(
    IDbContextFactory<WeldTraceDbContext> contexts,
    SiteReader sites,
    StampReader stamps
) : RecordPaper<TestReportModel>(BookChapter.Of, TestReportExporter.Write)
{
    public override IReadOnlyList<string> Kinds => ["leak-test", "pressure-test"];

    protected override async Task<TestReportModel?> ModelAsync(
        Guid id,
        Uri address,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(actor);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        db.ChangeTracker.QueryTrackingBehavior = QueryTrackingBehavior.NoTracking;
        if (
            await db.FindTestAsync(id, cancellation) is not { } test
            || test is not (LeakTest or PressureTest)
        )
        {
            return null;
        }

        var site = await sites.GetAsync(cancellation);
        var vessel = await db.Vessels.SingleAsync(v => v.Id == test.VesselId, cancellation);
        var used = (test.Instruments ?? []).Select(i => i.Id).ToList();
        var source = new ReportSource(
            test,
            await db.VesselDesigns.SingleAsync(d => d.Id == vessel.DesignId, cancellation),
            await db
                .Signatures.Where(s => s.SignedId == id)
                .OrderBy(s => s.At)
                .ToListAsync(cancellation),
            await db.Instruments.Where(i => used.Contains(i.Id)).ToListAsync(cancellation),
            await db
                .Certificates.Where(c => c.PersonId == test.InspectorId)
                .ToListAsync(cancellation),
            await db.TracesAsync(test as PressureTest, cancellation),
            await PhotographsAsync(db, test as PressureTest, cancellation),
            await stamps.ReadAsync(actor, cancellation),
            address
        );
        return test is LeakTest leak
            ? LeakReport.Map(source, leak)
            : PressureReport.Map(source, (PressureTest)test);
    }

    private static async Task<IReadOnlyList<Documents.Photograph>> PhotographsAsync(
        WeldTraceDbContext db,
        PressureTest? test,
        CancellationToken cancellation
    )
    {
        List<Documents.Photograph> photographs = [];
        foreach (
            var (photograph, burst) in (test?.Stages ?? [])
                .Select(s => s.Reading.Burst)
                .OfType<BurstReading>()
                .SelectMany(b => b.Photographs.Select(p => (p, b)))
        )
        {
            var file = await db.FindAttachmentAsync(photograph.Sha256, cancellation);
            photographs.Add(
                new(file!.Bytes, $"{photograph.FileName}, SHA-256 {photograph.Sha256}", burst.Path)
            );
        }

        return photographs;
    }
}
