using Microsoft.AspNetCore.Components;
using WeldTrace.Domain.Welding;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Welding.SignRun;

public sealed partial class SignRun
{
    private IReadOnlyList<FieldFault> _faults = [];
    private RunView? _view;
    private string _actor = "";

    [Parameter]
    public Guid Id { get; set; }

    [Inject]
    public required RunReader Reader { get; init; }

    [Inject]
    public required SignRunHandler Handler { get; init; }

    [Inject]
    public required CurrentActor Actor { get; init; }

    [Inject]
    public required NavigationManager Navigation { get; init; }

    [CascadingParameter]
    public UnitSystem SiteUnits { get; set; }

    [CascadingParameter]
    public HttpContext Http { get; set; } = null!;

    [SupplyParameterFromForm(FormName = "sign-run")]
    private SignRunForm In { get; set; } = null!;

    private WeldRun Run => _view!.Records.Run;

    protected override async Task OnInitializedAsync()
    {
        In ??= new();
        _actor = (await Actor.GetAsync(Http.RequestAborted)).PrintedName;
        _view = await Reader.FindAsync(Id, Http.RequestAborted);
        if (_view is null)
        {
            Http.Response.StatusCode = StatusCodes.Status404NotFound;
        }
        else if (Run.State == WeldRunState.Running || Run.Log is null || Run.IsSealed)
        {
            Navigation.NavigateTo(NextOfRun.Address(Run));
        }
    }

    private async Task SignAsync()
    {
        var outcome = await Handler.HandleAsync(
            Id,
            In,
            await Actor.GetAsync(Http.RequestAborted),
            Http.RequestAborted
        );
        _faults = Faults.Of<SignRunForm>(outcome);
        if (outcome.IsAccepted)
        {
            Navigation.NavigateTo(Routes.Run(Id));
        }
    }
}
