using Microsoft.AspNetCore.Components;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sites;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Equipment.ShowMachine;

public sealed partial class ShowMachine
{
    private IReadOnlyList<FieldFault> _faults = [];
    private MachineView? _view;
    private Actor _actor = null!;
    private Site _site = null!;
    private DateOnly _today;

    [Parameter]
    public Guid Id { get; set; }

    [Inject]
    public required MachineReader Reader { get; init; }

    [Inject]
    public required ReleaseMachineHandler Handler { get; init; }

    [Inject]
    public required CurrentActor CurrentActor { get; init; }

    [Inject]
    public required SiteReader Sites { get; init; }

    [Inject]
    public required SiteDay Day { get; init; }

    [Inject]
    public required NavigationManager Navigation { get; init; }

    [CascadingParameter]
    public HttpContext Http { get; set; } = null!;

    [SupplyParameterFromForm]
    private ReleaseMachineForm In { get; set; } = null!;

    private Machine Machine => _view!.Machine;

    private MachineState State => Machine.StateOn(_today);

    private bool MayClear => Machine.Standing.State == MachineState.Locked;

    private string Meaning => MayClear ? Machine.ClearMeaning : Machine.ReopenMeaning;

    private bool MayReopen => !MayClear && Machine.Standing.HasTestWelds;

    private bool NeedsTestWelds =>
        Machine.Standing is { State: MachineState.NeedsReproducibilityTest, HasTestWelds: false };

    /// <summary>Why it doesn't weld, or won't soon, in the words of the gate.</summary>
    private string? Why
    {
        get
        {
            var verdict = MachineRules.ForWelding(Machine, null, _today);
            var isOverdue = Machine.Maintenance.Any(d =>
                d.On(_today) == MaintenanceStanding.Overdue
            );
            return verdict.Standing == RuleStanding.Forbids || isOverdue ? verdict.Reason : null;
        }
    }

    protected override async Task OnInitializedAsync()
    {
        In ??= new();
        _site = await Sites.GetAsync(Http.RequestAborted);
        _today = await Day.TodayAsync(Http.RequestAborted);
        _actor = await CurrentActor.GetAsync(Http.RequestAborted);
        _view = Http.Found(await Reader.FindAsync(Id, Http.RequestAborted));
    }

    private async Task ReleaseAsync()
    {
        var outcome = await Handler.HandleAsync(Id, In, _actor, default);
        _faults = Faults.Of<ReleaseMachineForm>(outcome);
        if (outcome.IsAccepted)
        {
            Navigation.NavigateTo(Routes.Machine(Id));
        }
    }
}
