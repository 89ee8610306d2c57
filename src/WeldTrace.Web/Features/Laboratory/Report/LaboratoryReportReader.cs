using Microsoft.EntityFrameworkCore;
using WeldTrace.Documents;
using WeldTrace.Documents.LaboratoryReports;
using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Laboratory;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Persistence;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Laboratory.Report;

/// <summary>Prints a laboratory test.</summary>
public sealed class LaboratoryReportReader(
    IDbContextFactory<WeldTraceDbContext> contexts,
    StampReader stamps
)
{
    public async Task<byte[]?> PrintAsync(
        Guid id,
        Uri address,
        Actor actor,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var test = await db
            .LaboratoryTests.AsNoTracking()
            .SingleOrDefaultAsync(t => t.Id == id, cancellation);
        if (test is null)
        {
            return null;
        }

        var stamp = await stamps.ReadAsync(actor, cancellation);
        var model = Map(test, stamp, new Uri(address, Routes.LaboratoryTest(id))) with
        {
            People =
            [
                await db.ReportPersonAsync(
                    test.TesterId,
                    test.TesterName,
                    "tested",
                    ExaminationMethod.Mechanical,
                    test.Header.TestedOn,
                    cancellation
                ),
            ],
            Signatures = await db.SignatureEntriesAsync(test, cancellation),
        };
        using var pdf = new MemoryStream();
        LaboratoryReportExporter.Write(model, pdf);
        return pdf.ToArray();
    }

    private static LaboratoryReportModel Map(
        LaboratoryTest test,
        DocumentStamp stamp,
        Uri address
    ) =>
        new()
        {
            Stamp = stamp,
            RecordAddress = address.AbsoluteUri,
            Title = $"Laboratory report: {test.Label}",
            Verdict = PrintedMarks.Of(
                DomainMarks.Of(test.Verdict),
                TestRecord.VerdictWord(test.Verdict)
            ),
            Explanation = test.VerdictSentence,
            Particulars =
            [
                .. LaboratoryText.Of(test).Select(l => new LabelledValue(l.Label, l.Value)),
                new("Report handed in, SHA-256", test.FileSha256),
            ],
            Tables =
            [
                new(
                    "Readings",
                    LaboratoryText.Columns(test.Entry),
                    LaboratoryText.Rows(test.Entry)
                ),
                new(
                    "Results",
                    ["Specimen or figure", "Value", "Verdict"],
                    [
                        .. test.Lines.Select(l =>
                            (IReadOnlyList<string>)
                                [
                                    l.Name,
                                    l.Value,
                                    l.Verdict is { } v ? TestRecord.VerdictWord(v) : "reported",
                                ]
                        ),
                    ]
                ),
            ],
            Plots = test.Entry.Hardness is { } series
                ?
                [
                    new(
                        "Hardness across the weld",
                        LaboratoryPlots.Of(series),
                        "Below zero: advancing side; above: retreating side. Crosses: below the least hardness. Dashed: parent, limit and weld centre."
                    ),
                ]
                : [],
            Instruments = PrintedTests.Instruments(test.Instruments),
        };
}
