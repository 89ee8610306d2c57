using Microsoft.AspNetCore.Components;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Procedures.Show;

public sealed partial class ShowProcedure
{
    private IReadOnlyList<FieldFault> _faults = [];
    private IReadOnlyList<FieldFault> _withdrawFaults = [];
    private ProcedureView? _view;
    private Domain.Sites.Site _site = null!;
    private string _name = "";

    [Parameter]
    public Guid Id { get; set; }

    [Inject]
    public required ProcedurePageReader Reader { get; init; }

    [Inject]
    public required MoveProcedureHandler Moves { get; init; }

    [Inject]
    public required WithdrawProcedureHandler Withdrawals { get; init; }

    [Inject]
    public required ReviseProcedureHandler Revisions { get; init; }

    [Inject]
    public required CurrentActor Actor { get; init; }

    [Inject]
    public required SiteReader Sites { get; init; }

    [Inject]
    public required NavigationManager Navigation { get; init; }

    [CascadingParameter]
    public HttpContext Http { get; set; } = null!;

    [SupplyParameterFromForm(FormName = "move")]
    private MoveProcedureForm In { get; set; } = null!;

    [SupplyParameterFromForm(FormName = "revise")]
    private ReviseProcedureForm New { get; set; } = null!;

    [SupplyParameterFromForm(FormName = "withdraw")]
    private WithdrawProcedureForm Out { get; set; } = null!;

    protected override async Task OnInitializedAsync()
    {
        In ??= new();
        New ??= new();
        Out ??= new();
        _site = await Sites.GetAsync();
        _name = (await Actor.GetAsync()).PrintedName;
        _view = await Reader.FindAsync(Id, Http.RequestAborted);
        if (_view is null)
        {
            Http.Response.StatusCode = StatusCodes.Status404NotFound;
        }
    }

    private async Task MoveAsync()
    {
        var outcome = await Moves.HandleAsync(Id, In, await Actor.GetAsync(), Http.RequestAborted);
        _faults = Faults.Of<MoveProcedureForm>(outcome);
        if (outcome.IsAccepted)
        {
            Navigation.NavigateTo(Routes.Procedure(Id));
        }
    }

    private async Task WithdrawAsync()
    {
        var outcome = await Withdrawals.HandleAsync(
            Id,
            Out,
            await Actor.GetAsync(),
            Http.RequestAborted
        );
        _withdrawFaults = Faults.Of<WithdrawProcedureForm>(outcome, nameof(Out));
        if (outcome.IsAccepted)
        {
            Navigation.NavigateTo(Routes.Procedure(Id));
        }
    }

    private async Task ReviseAsync()
    {
        var next = await Revisions.HandleAsync(
            Id,
            New,
            await Actor.GetAsync(),
            Http.RequestAborted
        );
        _faults = Faults.Of<ReviseProcedureForm>(next.WithoutValue(), "New");
        if (next.IsAccepted)
        {
            Navigation.NavigateTo(Routes.EditProcedure(next.Value.Id));
        }
    }
}
