using Microsoft.AspNetCore.Components;
using WeldTrace.Domain.Welding;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Welding.EndRun;

public sealed partial class EndRun
{
    private IReadOnlyList<FieldFault> _faults = [];
    private WeldRun? _run;
    private string _started = "";

    [Parameter]
    public Guid Id { get; set; }

    [Inject]
    public required EndRunHandler Handler { get; init; }

    [Inject]
    public required CurrentActor Actor { get; init; }

    [Inject]
    public required SiteReader Sites { get; init; }

    [Inject]
    public required NavigationManager Navigation { get; init; }

    [CascadingParameter]
    public HttpContext Http { get; set; } = null!;

    [SupplyParameterFromForm(FormName = "end-run")]
    private EndRunForm In { get; set; } = null!;

    protected override async Task OnInitializedAsync()
    {
        In ??= new();
        _run = await Handler.FindAsync(Id, Http.RequestAborted);
        if (_run is null)
        {
            Http.Response.StatusCode = StatusCodes.Status404NotFound;
            return;
        }

        // Also a second press of the button comes this way: the run is ended, and work goes on.
        if (_run.State != WeldRunState.Running)
        {
            Navigation.NavigateTo(NextOfRun.Address(_run));
        }

        _started = (await Sites.GetAsync(Http.RequestAborted)).Show(_run.StartedAt);
    }

    private async Task EndAsync()
    {
        var outcome = await Handler.HandleAsync(
            Id,
            In,
            await Actor.GetAsync(Http.RequestAborted),
            Http.RequestAborted
        );
        _faults = Faults.Of<EndRunForm>(outcome);
        if (outcome.IsAccepted)
        {
            Navigation.NavigateTo(Routes.BringLog(Id));
        }
    }
}
