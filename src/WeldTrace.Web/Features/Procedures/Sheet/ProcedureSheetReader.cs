using System.Globalization;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Documents;
using WeldTrace.Documents.Book;
using WeldTrace.Documents.Procedures;
using WeldTrace.Documents.Traveler;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Archives;
using WeldTrace.Persistence.Attachments;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Procedures.Sheet;

/// <summary>Prints a procedure revision as pWPS or WPS.</summary>
public sealed class ProcedureSheetReader(
    IDbContextFactory<WeldTraceDbContext> contexts,
    ProcedurePageReader pages,
    StampReader stamps
) : RecordPaper<ProcedureSheetModel>(BookChapter.Of, ProcedureSheetExporter.Write)
{
    public override IReadOnlyList<string> Kinds => ["procedure-revision"];

    protected override async Task<ProcedureSheetModel?> ModelAsync(
        Guid id,
        Uri address,
        Actor actor,
        CancellationToken cancellation
    )
    {
        var view = await pages.FindAsync(id, cancellation);
        if (view is null)
        {
            return null;
        }

        return Map(
            view,
            await stamps.ReadAsync(actor, cancellation),
            new Uri(address, Routes.Procedure(id)),
            await SketchAsync(view.Revision.Content.DetailsOrNone.Sketch, cancellation)
        );
    }

    private async Task<Attachment?> SketchAsync(JointSketch? sketch, CancellationToken cancellation)
    {
        if (sketch?.MediaType.StartsWith("image/", StringComparison.Ordinal) is not true)
        {
            return null;
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db.FindAttachmentAsync(sketch.Sha256, cancellation);
    }

    private static ProcedureSheetModel Map(
        ProcedureView view,
        DocumentStamp stamp,
        Uri address,
        Attachment? sketch
    )
    {
        var (revision, content) = (view.Revision, view.Revision.Content);
        return new ProcedureSheetModel
        {
            Stamp = stamp,
            RecordAddress = address.AbsoluteUri,
            Identity = Identity(view),
            Restriction = revision.State switch
            {
                ProcedureState.Draft => "Draft: binds nobody, nothing is welded by it.",
                ProcedureState.Trial or ProcedureState.Qualified =>
                    "For test pieces only; not released for production.",
                ProcedureState.Superseded or ProcedureState.Withdrawn => "No longer in use.",
                _ => null,
            },
            Before = [.. Groups(view, g => g < ProcedureGroup.Parameters)],
            After = [.. Groups(view, g => g > ProcedureGroup.Parameters)],
            Sketch = sketch is null
                ? null
                : new Photograph(sketch.Bytes, "Sketch of the joint", "Sketch of the joint"),
            Parameters = [.. content.Windows.Select(Parameter)],
            Computed = [.. PrintedFigures.Of(content, view.Tool?.Geometry, view.Pin)],
            Joints = [.. Joints(view, stamp.Units)],
            UncheckedLimits = revision.Qualified is { Range.RuleSet: { WasChecked: false } ruleSet }
                ? [$"Range of qualification by {ruleSet.Label}: {ruleSet.Source}"]
                : [],
            Changes = [revision.ChangeReason, .. Changes(view)],
            Signatures =
            [
                .. view.Signatures.Select(s => new SignatureEntry(
                    s.PrintedName,
                    s.Meaning,
                    s.At,
                    FormattableString.Invariant($"{revision.Label}, version {s.SignedVersion}"),
                    s.SignedSha256
                )),
            ],
        };
    }

    private static IEnumerable<ValueGroup> Groups(
        ProcedureView view,
        Func<ProcedureGroup, bool> wanted
    ) =>
        ProcedureLines
            .Of(view.Revision.Content, view.Behind)
            .Where(l => wanted(l.Group))
            .GroupBy(l => l.Group)
            .Select(g => new ValueGroup(
                ProcedureFields.Heading(g.Key),
                [
                    .. g.Select(l => new LabelledValue(
                        l.IsEssential ? l.Name + " (essential)" : l.Name,
                        l.Text
                    )),
                ]
            ));

    private static IEnumerable<JointSheet> Joints(ProcedureView view, UnitSystem units) =>
        view.Tool is { } tool
            ? SamePasses
                .Of(view.Drawn)
                .Select(same =>
                    PrintedJoints.Of(
                        same.First.Joint,
                        view.Revision,
                        tool,
                        string.Join(
                            ", ",
                            same.Joints.Select(j => $"{j.Joint.Code} of {j.Design.Label}")
                        ),
                        units
                    )
                )
            : [];

    private static ProcedureIdentity Identity(ProcedureView view)
    {
        var revision = view.Revision;
        return new ProcedureIdentity
        {
            Number = revision.Number,
            Title = revision.Title,
            Revision = revision.Revision,
            State = PrintedMarks.Of(
                DomainMarks.Of(revision.State),
                ProcedureRevision.StateWord(revision.State)
            ),
            IsPreliminary = revision.State is ProcedureState.Draft or ProcedureState.Trial,
            ReleasedAt = view
                .Signatures.LastOrDefault(s => s.Meaning == ProcedureRevision.ReleaseMeaning)
                ?.At,
            SupersededBy = view
                .Revisions.FirstOrDefault(r => r.Id == revision.SupersededById)
                ?.Label,
            Supersedes = view.Revisions.FirstOrDefault(r => r.SupersededById == revision.Id)?.Label,
            QualifiedBy = revision.Qualified is { } qualified
                ? FormattableString.Invariant(
                    $"{qualified.Number}, {qualified.SignedAt:yyyy-MM-dd}"
                )
                : null,
            Particulars = [new LabelledValue("Author", revision.AuthorName)],
        };
    }

    private static IEnumerable<string> Changes(ProcedureView view) =>
        view.Revisions.FirstOrDefault(r => r.Id == view.Revision.BasedOnId) is { } before
            ? ProcedureComparison
                .Of(before.Content, view.Revision.Content)
                .Where(l => l.IsChanged)
                .Select(l =>
                    $"{l.Name}: {l.Left ?? "not laid down"} before, now {l.Right ?? "not laid down"}{(l.IsEssential ? "; essential" : "")}."
                )
            : [];

    private static ParameterLine Parameter(ParameterWindow window) =>
        new(ParameterNames.Of(window.Parameter), window.Unit)
        {
            SetPoint = Text(window.SetPoint),
            Lower = Text(window.Lower),
            Upper = Text(window.Upper),
            IsEssential = window.IsEssential,
            Remark = window.ControlledBy,
        };

    private static string Text(decimal value) => value.ToString(CultureInfo.InvariantCulture);
}
