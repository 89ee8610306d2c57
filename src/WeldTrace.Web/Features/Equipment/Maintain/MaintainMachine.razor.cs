using Microsoft.AspNetCore.Components;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Records;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Equipment.Maintain;

public sealed partial class MaintainMachine
{
    private IReadOnlyList<FieldFault> _serviceFaults = [];
    private IReadOnlyList<FieldFault> _planFaults = [];
    private IReadOnlyList<FieldFault> _dropFaults = [];
    private Machine? _machine;
    private DateOnly _today;

    [Parameter]
    public Guid Id { get; set; }

    [Inject]
    public required MachineReader Reader { get; init; }

    [Inject]
    public required MaintainMachineHandler Handler { get; init; }

    [Inject]
    public required CurrentActor Actor { get; init; }

    [Inject]
    public required SiteDay Day { get; init; }

    [Inject]
    public required NavigationManager Navigation { get; init; }

    [CascadingParameter]
    public HttpContext Http { get; set; } = null!;

    [SupplyParameterFromForm(FormName = "service")]
    private RecordServiceForm Done { get; set; } = null!;

    [SupplyParameterFromForm(FormName = "plan")]
    private PlanMaintenanceForm Plan { get; set; } = null!;

    [SupplyParameterFromForm(FormName = "drop")]
    private DropMaintenanceForm Drop { get; set; } = null!;

    private IReadOnlyList<FieldOption> Items =>
        [
            new("", "choose"),
            .. _machine!.Maintenance.Select(d => new FieldOption(d.Item.Name, d.Item.Name)),
        ];

    protected override async Task OnInitializedAsync()
    {
        _today = await Day.TodayAsync(Http.RequestAborted);
        Done ??= new() { On = _today };
        Plan ??= new() { From = _today };
        Drop ??= new();
        _machine = Http.Found(await Reader.FindMachineAsync(Id, Http.RequestAborted));
    }

    private async Task RecordAsync()
    {
        var outcome = await Handler.RecordAsync(Id, Done, await Actor.GetAsync(), default);
        _serviceFaults = Faults.Of<RecordServiceForm>(outcome, nameof(Done));
        Leave(outcome);
    }

    private async Task PlanAsync()
    {
        var outcome = await Handler.PlanAsync(Id, Plan, await Actor.GetAsync(), default);
        _planFaults = Faults.Of<PlanMaintenanceForm>(outcome, nameof(Plan));
        Leave(outcome);
    }

    private async Task DropAsync()
    {
        var outcome = await Handler.DropAsync(Id, Drop, await Actor.GetAsync(), default);
        _dropFaults = Faults.Of<DropMaintenanceForm>(outcome, nameof(Drop));
        Leave(outcome);
    }

    private void Leave(Outcome outcome)
    {
        if (outcome.IsAccepted)
        {
            Navigation.NavigateTo(Routes.MachineMaintenance(Id));
        }
    }
}
