using Microsoft.AspNetCore.Components;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sites;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Qualifications.Show;

public sealed partial class ShowQualification
{
    private IReadOnlyList<FieldFault> _faults = [];
    private IReadOnlyList<FieldFault> _abandonFaults = [];
    private QualificationView? _view;
    private Site _site = null!;
    private string _name = "";

    [Parameter]
    public Guid Id { get; set; }

    [Inject]
    public required QualificationReader Reader { get; init; }

    [Inject]
    public required QualificationHandler Handler { get; init; }

    [Inject]
    public required CurrentActor Actor { get; init; }

    [Inject]
    public required SiteReader Sites { get; init; }

    [Inject]
    public required NavigationManager Navigation { get; init; }

    [CascadingParameter]
    public HttpContext Http { get; set; } = null!;

    [SupplyParameterFromForm(FormName = "sign")]
    private SignQualificationForm In { get; set; } = null!;

    [SupplyParameterFromForm(FormName = "abandon")]
    private AbandonQualificationForm Out { get; set; } = null!;

    private QualificationRecord Record => _view!.Records.Record;

    protected override async Task OnInitializedAsync()
    {
        In ??= new();
        Out ??= new();
        _site = await Sites.GetAsync(Http.RequestAborted);
        _name = (await Actor.GetAsync(Http.RequestAborted)).PrintedName;
        _view = Http.Found(await Reader.FindAsync(Id, Http.RequestAborted));
    }

    private async Task SignAsync()
    {
        var outcome = await Handler.SignAsync(Id, In, await Actor.GetAsync(), Http.RequestAborted);
        _faults = Faults.Of<SignQualificationForm>(outcome);
        Leave(outcome);
    }

    private async Task AbandonAsync()
    {
        var outcome = await Handler.AbandonAsync(
            Id,
            Out,
            await Actor.GetAsync(),
            Http.RequestAborted
        );
        _abandonFaults = Faults.Of<AbandonQualificationForm>(outcome, nameof(Out));
        Leave(outcome);
    }

    private void Leave(Outcome outcome)
    {
        if (outcome.IsAccepted)
        {
            Navigation.NavigateTo(Routes.Qualification(Id));
        }
    }
}
