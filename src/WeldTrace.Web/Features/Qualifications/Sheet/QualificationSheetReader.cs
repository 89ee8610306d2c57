using Microsoft.EntityFrameworkCore;
using WeldTrace.Documents;
using WeldTrace.Documents.Book;
using WeldTrace.Documents.Procedures;
using WeldTrace.Documents.Qualifications;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Archives;
using WeldTrace.Persistence.Attachments;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Qualifications.Sheet;

/// <summary>Prints a qualification record with its evidence.</summary>
public sealed class QualificationSheetReader(
    QualificationReader qualifications,
    IDbContextFactory<WeldTraceDbContext> contexts,
    StampReader stamps
) : RecordPaper<QualificationModel>(BookChapter.Of, QualificationExporter.Write)
{
    public override IReadOnlyList<string> Kinds => ["qualification"];

    protected override async Task<QualificationModel?> ModelAsync(
        Guid id,
        Uri address,
        Actor actor,
        CancellationToken cancellation
    )
    {
        var view = await qualifications.FindAsync(id, cancellation);
        if (view is null)
        {
            return null;
        }

        var stamp = await stamps.ReadAsync(actor, cancellation);
        return Map(view, stamp, new Uri(address, Routes.Qualification(id))) with
        {
            Procedure = await ProcedureAsync(view.Records.Revision.Content, cancellation),
            Photographs = await PhotographsAsync(view.Records.Tests, cancellation),
            Sources = await SourcesAsync(view.Records.Record, cancellation),
        };
    }

    private static QualificationModel Map(QualificationView view, DocumentStamp stamp, Uri address)
    {
        var (record, standing) = (view.Records.Record, view.Standing);
        return new QualificationModel
        {
            Stamp = stamp,
            RecordAddress = address.AbsoluteUri,
            Number = record.Number,
            State = PrintedMarks.Of(
                DomainMarks.Of(record.State),
                QualificationRecord.StateWord(record.State)
            ),
            Particulars = [.. Particulars(record)],
            Missing =
                record.State == QualificationState.Signed ? []
                : record.AbandonedBecause is { } because ? [$"Given up: {because}"]
                : standing.Missing,
            RangeSentence = record.Range is { } range ? RangeWords.Sentence(range) : null,
            Range = record.Range is { } covered
                ?
                [
                    .. RangeWords
                        .Table(covered)
                        .Select(l => new RangeRow(l.Variable, l.Covered, l.Rule)),
                ]
                : [],
            Pieces = [.. standing.Pieces.SelectMany(p => PrintedPieces.Of(p, stamp))],
            Results = [.. standing.Tests.SelectMany(PrintedResults.Of)],
            Signatures = [.. view.Signatures.Select(s => Signed(s, view))],
            UncheckedLimits = [.. record.Plan.Unchecked.Select(t => $"{t.Label}: {t.Source}")],
        };
    }

    private static IEnumerable<LabelledValue> Particulars(QualificationRecord record)
    {
        yield return new LabelledValue("Procedure", record.ProcedureLabel);
        yield return new LabelledValue("Planned by", record.PlannedByName);
        yield return new LabelledValue(
            "Weld on each test piece",
            FormattableString.Invariant(
                $"{record.Plan.PieceLength.Millimetres:0.#} mm, {record.Plan.Discard.Millimetres:0.#} mm discarded at both ends"
            )
        );
        if (record.Plan.Tensile is { } tensile)
        {
            yield return new LabelledValue(
                "Tensile strength",
                FormattableString.Invariant(
                    $"at least {tensile.Megapascals} MPa: {tensile.Derivation}"
                )
            );
        }

        if (record.Plan.Former is { } former)
        {
            yield return new LabelledValue(
                "Bend former",
                FormattableString.Invariant($"at most {former.Millimetres} mm: {former.Derivation}")
            );
        }
    }

    private async Task<IReadOnlyList<ValueGroup>> ProcedureAsync(
        ProcedureContent content,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return
        [
            .. ProcedureLines
                .Of(content, await db.FindObjectsAsync(content, cancellation))
                .GroupBy(l => l.Group)
                .Select(g => new ValueGroup(
                    ProcedureFields.Heading(g.Key),
                    [.. g.Select(l => new LabelledValue(l.Name, l.Text))]
                )),
        ];
    }

    private static SignatureEntry Signed(Signature signature, QualificationView view)
    {
        var label =
            view.Records.Pieces.FirstOrDefault(p => p.Id == signature.SignedId)?.Label
            ?? view.Records.Tests.FirstOrDefault(t => t.Id == signature.SignedId)?.Label
            ?? view.Records.Record.Number;
        return new SignatureEntry(
            signature.PrintedName,
            signature.Meaning,
            signature.At,
            FormattableString.Invariant($"{label}, version {signature.SignedVersion}"),
            signature.SignedSha256
        );
    }

    private async Task<IReadOnlyList<Photograph>> PhotographsAsync(
        IReadOnlyList<SpecimenTest> tests,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        List<Photograph> photographs = [];
        foreach (var test in tests.Where(t => t.FileSha256 is not null))
        {
            var file = await db.FindAttachmentAsync(test.FileSha256!, cancellation);
            if (file is { } picture && IsPicture(picture))
            {
                photographs.Add(new Photograph(picture.Bytes, test.Label, test.VerdictSentence));
            }
        }

        return photographs;
    }

    private static bool IsPicture(Attachment file) =>
        file.MediaType.StartsWith("image/", StringComparison.Ordinal);

    private async Task<IReadOnlyList<SourceNote>> SourcesAsync(
        QualificationRecord record,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var ids = record.Plan.Tables.Select(t => t.Id).ToList();
        var tables = await db
            .LimitTables.AsNoTracking()
            .Where(t => ids.Contains(t.Id))
            .OrderBy(t => t.Code)
            .ToListAsync(cancellation);
        return
        [
            .. tables.Select(t => new SourceNote(
                $"{t.Label}, {LimitWords.Of(t.Covers)}",
                t.Text.Source.ToString()
            )
            {
                Checked = t.OwnCheck is { } check
                    ? FormattableString.Invariant(
                        $"against own copy by {check.ByName}, {check.On:yyyy-MM-dd}"
                    )
                    : null,
            }),
        ];
    }
}
