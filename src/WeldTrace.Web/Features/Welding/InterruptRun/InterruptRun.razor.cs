using Microsoft.AspNetCore.Components;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Units;
using WeldTrace.Web.Components.Figures;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Welding.InterruptRun;

public sealed partial class InterruptRun
{
    private IReadOnlyList<FieldFault> _faults = [];
    private WeldRun? _run;

    [Parameter]
    public Guid Id { get; set; }

    [Inject]
    public required InterruptRunHandler Handler { get; init; }

    [Inject]
    public required CurrentActor Actor { get; init; }

    [Inject]
    public required NavigationManager Navigation { get; init; }

    [CascadingParameter]
    public UnitSystem SiteUnits { get; set; }

    [CascadingParameter]
    public HttpContext Http { get; set; } = null!;

    [SupplyParameterFromForm(FormName = "interrupt-run")]
    private InterruptRunForm In { get; set; } = null!;

    private Unit Unit => SiteUnit.For<Length>(SiteUnits);

    private string Planned => UnitText.For(_run!.PlannedPath, SiteUnits).ToString();

    protected override async Task OnInitializedAsync()
    {
        In ??= new();
        _run = await Handler.FindAsync(Id, Http.RequestAborted);
        if (_run is null)
        {
            Http.Response.StatusCode = StatusCodes.Status404NotFound;
        }
        else if (_run.State != WeldRunState.Running)
        {
            Navigation.NavigateTo(NextOfRun.Address(_run));
        }
    }

    private async Task InterruptAsync()
    {
        var outcome = await Handler.HandleAsync(
            Id,
            In,
            SiteUnits,
            await Actor.GetAsync(Http.RequestAborted),
            Http.RequestAborted
        );
        _faults = Faults.Of<InterruptRunForm>(outcome);
        if (outcome.IsAccepted)
        {
            Navigation.NavigateTo(Routes.BringLog(Id));
        }
    }
}
