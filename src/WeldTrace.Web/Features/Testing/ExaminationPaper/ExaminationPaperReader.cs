using Microsoft.EntityFrameworkCore;
using WeldTrace.Documents;
using WeldTrace.Documents.Book;
using WeldTrace.Documents.TestReports;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Persistence;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Testing.ExaminationPaper;

/// <summary>What the paper of an examination is printed from.</summary>
internal sealed record PrintedExamination(
    StepSignOff SignOff,
    ExaminationReport Report,
    Vessel Vessel,
    VesselDesign Design,
    IReadOnlyList<Finding> Findings,
    DocumentStamp Stamp
);

/// <summary>Prints a visual or other examination without readings.</summary>
public sealed class ExaminationPaperReader(
    IDbContextFactory<WeldTraceDbContext> contexts,
    StampReader stamps
) : RecordPaper<TestReportModel>(BookChapter.Of, TestReportExporter.Write)
{
    public override IReadOnlyList<string> Kinds => ["sign-off"];

    /// <summary>What the paper prints; null when there is no such examination: other steps are signed off without one.</summary>
    protected override async Task<TestReportModel?> ModelAsync(
        Guid id,
        Uri address,
        Actor actor,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        db.ChangeTracker.QueryTrackingBehavior = QueryTrackingBehavior.NoTracking;
        var signOff = await db.StepSignOffs.SingleOrDefaultAsync(s => s.Id == id, cancellation);
        if (signOff?.Examination is not { } report)
        {
            return null;
        }

        var vessel = await db.Vessels.SingleAsync(v => v.Id == signOff.VesselId, cancellation);
        var source = new PrintedExamination(
            signOff,
            report,
            vessel,
            await db.VesselDesigns.SingleAsync(d => d.Id == vessel.DesignId, cancellation),
            await db.Findings.Where(f => f.EvidenceId == id).ToListAsync(cancellation),
            await stamps.ReadAsync(actor, cancellation)
        );
        var model = ExaminationSheet.Map(source, new Uri(address, Routes.ExaminationPaper(id)));
        return model with
        {
            Tables =
            [
                .. model.Tables,
                await db.InstrumentsAsync(report.Instruments, cancellation),
                PrintedTests.People(
                    await db.PersonAsync(
                        signOff.PersonId,
                        signOff.PrintedName,
                        "examined",
                        report.Certified,
                        source.Stamp.DayOf(signOff.At),
                        cancellation
                    )
                ),
            ],
            Signatures = await db.SignatureEntriesAsync(signOff, cancellation),
        };
    }
}
