using Microsoft.AspNetCore.Components;
using WeldTrace.Documents.Drawings;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sites;
using WeldTrace.Domain.Vessels;
using WeldTrace.Web.Components.Runs;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Findings.ShowFinding;

public sealed partial class ShowFinding
{
    private ShownFinding? _shown;
    private SeamPlan? _seam;
    private Site _site = null!;
    private Actor _viewer = null!;

    [Inject]
    public required ShowFindingHandler Handler { get; init; }

    [Inject]
    public required CurrentActor Actors { get; init; }

    [Inject]
    public required SiteReader Sites { get; init; }

    [Inject]
    public required NavigationManager Navigation { get; init; }

    [Parameter]
    public Guid Id { get; set; }

    private Finding Finding => _shown!.Finding;

    private RouteStep? Step => _shown!.Vessel.Step(Finding.StepSequence);

    private string? Evidence =>
        (Finding.EvidenceKind, Finding.EvidenceId) switch
        {
            ("weld-run", { } id) => Routes.Run(id),
            ("leak-test", { } id) => Routes.LeakTest(id),
            ("pressure-test", { } id) => Routes.PressureTest(id),
            ("section", { } id) => Routes.Section(id),
            ("sign-off", { } id) => Routes.ExaminationPaper(id),
            ("finding", { } id) => Routes.Finding(id),
            _ => null,
        };

    private string PlaceText => FindingWords.PlaceText(Finding.Place);

    protected override async Task OnInitializedAsync()
    {
        (_viewer, _site) = (await Actors.GetAsync(), await Sites.GetAsync());
        _shown = await Handler.FindAsync(Id, CancellationToken.None);
        if (_shown is null)
        {
            Navigation.NotFound();
            return;
        }

        _seam = FindingSeams.Of(_shown.Finding, _shown.Design.Content);
    }
}
