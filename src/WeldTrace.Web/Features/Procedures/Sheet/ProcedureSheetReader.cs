using System.Globalization;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Documents;
using WeldTrace.Documents.Procedures;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sites;
using WeldTrace.Persistence;
using WeldTrace.Web.Features.Procedures.Show;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Procedures.Sheet;

/// <summary>Prints a procedure revision as pWPS or WPS.</summary>
public sealed class ProcedureSheetReader(
    ProcedurePageReader pages,
    SiteReader sites,
    TimeProvider clock
)
{
    public async Task<byte[]?> PrintAsync(
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

        var site = await sites.GetAsync(cancellation);
        using var pdf = new MemoryStream();
        ProcedureSheetExporter.Write(
            Map(view, site, new Uri(address, Routes.Procedure(id)), actor),
            pdf
        );
        return pdf.ToArray();
    }

    private ProcedureSheetModel Map(ProcedureView view, Site site, Uri address, Actor actor)
    {
        var (revision, content) = (view.Revision, view.Revision.Content);
        return new ProcedureSheetModel
        {
            Stamp = new DocumentStamp
            {
                SiteName = site.Name,
                PrintedBy = actor.PrintedName,
                PrintedAt = clock.GetUtcNow(),
                TimeZone = site.TimeZone,
                Units = site.Units,
            },
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
            Scope =
            [
                new LabelledValue("Parent material", $"{content.Alloy}-{content.Temper}"),
                new LabelledValue(
                    "Thickness",
                    FormattableString.Invariant($"{content.Thickness.Millimetres:0.###} mm")
                ),
                new LabelledValue("Joint type", content.JointType),
                new LabelledValue("Tool design", content.ToolDesignLabel),
                new LabelledValue(
                    "Spindle sense, seen from the shoulder side",
                    Domain.Welding.WeldRun.SenseWord(content.SpindleSense)
                ),
                new LabelledValue(
                    "Shortest excursion that counts",
                    $"{Text(content.DebounceSeconds)} s"
                ),
            ],
            Parameters = [.. content.Windows.Select(Parameter)],
            Computed = [.. Computed(content, view)],
            Instructions =
                content.Notes.Length == 0 ? [] : [new LabelledValue("Notes", content.Notes)],
            Changes = [revision.ChangeReason],
            Signatures =
            [
                .. view.Signatures.Select(s => new SignatureEntry(
                    s.PrintedName,
                    "",
                    s.Meaning,
                    s.At,
                    FormattableString.Invariant($"{revision.Label}, version {s.SignedVersion}"),
                    s.SignedSha256
                )),
            ],
        };
    }

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
            SupersededBy = view
                .Revisions.FirstOrDefault(r => r.Id == revision.SupersededById)
                ?.Label,
            Particulars = [new LabelledValue("Author", revision.AuthorName)],
        };
    }

    private static ParameterLine Parameter(ParameterWindow window) =>
        new(ParameterNames.Of(window.Parameter), window.Unit)
        {
            SetPoint = Text(window.SetPoint),
            Lower = Text(window.Lower),
            Upper = Text(window.Upper),
            IsEssential = window.IsEssential,
        };

    private static IEnumerable<ComputedLine> Computed(ProcedureContent content, ProcedureView view)
    {
        if (
            WindowFigures.Of(content, view.Tool?.Geometry)
            is not { AtSetPoint.IsRefused: false } figures
        )
        {
            yield break;
        }

        yield return new ComputedLine("Weld pitch", "mm/rev")
        {
            AtSetPoint = Text(figures.AtSetPoint.Value.Pitch.MillimetresPerRevolution),
            Least = figures.Least is { } least ? Text(least.MillimetresPerRevolution) : null,
            Greatest = figures.Greatest is { } greatest
                ? Text(greatest.MillimetresPerRevolution)
                : null,
            Working = "travel speed / spindle speed",
        };
        if (figures.Heat is { IsRefused: false } heat)
        {
            yield return new ComputedLine("Peak temperature, estimate", "°C")
            {
                AtSetPoint = Text(Math.Round(heat.Value.Middle.DegreesCelsius)),
                Least = Text(Math.Round(heat.Value.Low.DegreesCelsius)),
                Greatest = Text(Math.Round(heat.Value.High.DegreesCelsius)),
                Working = "Arbegast and Hartley 1998, from the heat index; test welds decide",
            };
        }
    }

    private static string Text(decimal value) => value.ToString(CultureInfo.InvariantCulture);

    private static string Text(double value) => value.ToString("G3", CultureInfo.InvariantCulture);
}

public static class ProcedureSheetEndpoint
{
    public static void MapProcedureSheet(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            "/procedures/{id:guid}/sheet.pdf",
            async (
                Guid id,
                HttpContext http,
                ProcedureSheetReader reader,
                IDbContextFactory<WeldTraceDbContext> contexts
            ) =>
            {
                var actor = await CurrentActor.GetAsync(contexts, http.User, http.RequestAborted);
                var pdf = await reader.PrintAsync(
                    id,
                    http.SiteAddress(),
                    actor,
                    http.RequestAborted
                );
                return pdf is null ? Results.NotFound() : Results.File(pdf, "application/pdf");
            }
        );
}
