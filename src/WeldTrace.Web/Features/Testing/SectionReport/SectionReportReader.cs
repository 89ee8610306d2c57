using Microsoft.EntityFrameworkCore;
using WeldTrace.Documents;
using WeldTrace.Documents.Book;
using WeldTrace.Documents.Procedures;
using WeldTrace.Documents.TestReports;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sectioning;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Components.Pictures;
using WeldTrace.Web.Components.Runs;
using WeldTrace.Web.Pictures;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Testing.SectionReport;

/// <summary>Prints a section with its picture and what was measured on it.</summary>
public sealed class SectionReportReader(
    IDbContextFactory<WeldTraceDbContext> contexts,
    PictureStore pictures,
    StampReader stamps
) : RecordPaper<TestReportModel>(BookChapter.Of, TestReportExporter.Write)
{
    public override IReadOnlyList<string> Kinds => ["section"];

    protected override async Task<TestReportModel?> ModelAsync(
        Guid id,
        Uri address,
        Actor actor,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var section = await db
            .Sections.AsNoTracking()
            .SingleOrDefaultAsync(s => s.Id == id, cancellation);
        if (section is null)
        {
            return null;
        }

        var stamp = await stamps.ReadAsync(actor, cancellation);
        var jpeg = await pictures.WholeAsync(
            section.Photograph,
            PrintedSections.LongestSide,
            cancellation
        );
        return Map(section, stamp, new Uri(address, Routes.Section(id))) with
        {
            Photographs = jpeg is null ? [] : [PrintedSections.Picture(section, jpeg)],
            Seams = await SeamsAsync(db, section, cancellation),
            Tables =
            [
                await db.InstrumentsAsync(section.Instruments, cancellation),
                PrintedTests.People(
                    await db.PersonAsync(
                        section.InspectorId,
                        section.InspectorName,
                        "examined",
                        Domain.Certification.ExaminationMethod.Macroscopic,
                        stamp.DayOf(section.TestedAt),
                        cancellation
                    )
                ),
            ],
            Signatures = await db.SignatureEntriesAsync(section, cancellation),
        };
    }

    private static TestReportModel Map(SectionExamination section, DocumentStamp stamp, Uri address)
    {
        var cut = section.Cut;
        return new TestReportModel
        {
            Stamp = stamp,
            RecordAddress = address.AbsoluteUri,
            Title = "Section report",
            Subject = $"Section of {cut.JointCode}, {section.VesselSerial}",
            Verdict = PrintedTests.Mark(section.Verdict),
            Explanation =
                section.VerdictSentence.Length > 0 ? section.VerdictSentence : "Not concluded.",
            Notices = [.. PrintedTests.Notices(section)],
            Particulars =
            [
                new("Vessel, step", $"{section.VesselSerial}, step {section.StepSequence}"),
                new(
                    "Cut",
                    FormattableString.Invariant(
                        $"{cut.JointCode}, {(cut.PassNumber is { } pass ? $"pass {pass}" : "all passes")}, {cut.Angle.Degrees:0.#}° from the start"
                    )
                ),
                .. SectionText.Of(section).Select(l => new LabelledValue(l.Label, l.Value)),
                new("Examined", $"{section.InspectorName}, {stamp.Show(section.TestedAt)}"),
                new("Seen on the whole section", section.Picture?.Seen),
                new(
                    "Photograph",
                    $"{section.Photograph.FileName}, SHA-256 {section.Photograph.Sha256}"
                ),
                new("Remark", section.Remark),
            ],
            UncheckedLimits = section.Standards is { Limits.WasChecked: false } standards
                ? [$"{standards.Limits.Label}: {standards.Limits.Source}"]
                : [],
            Measurements = PrintedSections.Measurements(section),
            Replaced = PrintedSections.Replaced(section),
            Workings = section.Picture is { } picture
                ? [.. PictureWorkings.Of(picture).Select(w => w.Working)]
                : [],
            Sources = section.Standards is { } by
                ?
                [
                    new SourceNote("Examination", $"{by.Method}, {by.MethodEdition}"),
                    new SourceNote("Limits of imperfections", by.Limits.Source),
                ]
                : [],
        };
    }

    private static async Task<IReadOnlyList<ReportSeam>> SeamsAsync(
        WeldTraceDbContext db,
        SectionExamination section,
        CancellationToken cancellation
    )
    {
        List<ReportSeam> seams = [];
        foreach (var run in await db.RunsOfJointAsync(section, cancellation))
        {
            seams.Add(
                new(
                    FormattableString.Invariant($"{run.Run.JointCode} pass {run.Run.PassNumber}"),
                    RunSeams.Plan(run.Run, run.Pass, section.Cut.Angle),
                    RunSeams.Sides(run)
                )
            );
        }

        return seams;
    }
}
