using Microsoft.EntityFrameworkCore;
using WeldTrace.Documents;
using WeldTrace.Documents.Book;
using WeldTrace.Documents.Procedures;
using WeldTrace.Documents.TestReports;
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
) : RecordPaper<TestReportModel>(BookChapter.Of, TestReportExporter.Write)
{
    public override IReadOnlyList<string> Kinds => ["laboratory-test"];

    protected override async Task<TestReportModel?> ModelAsync(
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
        var model = Map(test, stamp, new Uri(address, Routes.LaboratoryTest(id)));
        return model with
        {
            Tables =
            [
                .. model.Tables,
                await db.InstrumentsAsync(test.Instruments, cancellation),
                PrintedTests.People(
                    await db.PersonAsync(
                        test.TesterId,
                        test.TesterName,
                        "tested",
                        ExaminationMethod.Mechanical,
                        test.Header.TestedOn,
                        cancellation
                    )
                ),
            ],
            Signatures = await db.SignatureEntriesAsync(test, cancellation),
        };
    }

    private static TestReportModel Map(LaboratoryTest test, DocumentStamp stamp, Uri address) =>
        new()
        {
            Stamp = stamp,
            RecordAddress = address.AbsoluteUri,
            Title = "Laboratory report",
            Subject = test.Label,
            Verdict = PrintedTests.Mark(test.Verdict),
            Explanation = test.VerdictSentence,
            Notices = [.. PrintedTests.Notices(test.Verdict)],
            Particulars =
            [
                .. LaboratoryText.Of(test).Select(l => new LabelledValue(l.Label, l.Value)),
                new("Report handed in, SHA-256", test.FileSha256),
            ],
            Tables = [Readings(test), Results(test)],
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
            Workings =
            [
                .. new[]
                {
                    test.Efficiency()?.Working,
                    test.Traverse()?.Working,
                }.OfType<Engineering.Working>(),
            ],
            Sources =
            [
                new SourceNote("Test", $"{test.Header.Method}, {test.Header.MethodEdition}"),
                new SourceNote(
                    "Limits",
                    $"{test.Header.Acceptance}, {test.Header.AcceptanceEdition}"
                ),
            ],
        };

    private static ReportTable Readings(LaboratoryTest test) =>
        new("Readings", LaboratoryText.Columns(test.Entry), LaboratoryText.Rows(test.Entry))
        {
            IsNumeric = false,
        };

    private static ReportTable Results(LaboratoryTest test) =>
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
        )
        {
            IsNumeric = false,
        };
}
