using Microsoft.AspNetCore.Components;
using WeldTrace.Domain.Tooling;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Components.Marks;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Tools.Show;

public sealed partial class ShowTool
{
    private const double LittleLife = 0.1;

    private static readonly IReadOnlyList<FieldOption> Acts =
    [
        new(nameof(ToolAct.PutInService), "put in service"),
        new(nameof(ToolAct.Hold), "hold until someone clears it"),
        new(nameof(ToolAct.Retire), "retire for good"),
    ];

    private static readonly IReadOnlyList<FieldOption> Causes =
    [
        new(nameof(RetirementReason.Limit), "life limit"),
        new(nameof(RetirementReason.Wear), "wear"),
        new(nameof(RetirementReason.Breakage), "breakage"),
        new(nameof(RetirementReason.Other), "other"),
    ];

    private IReadOnlyList<FieldFault> _faults = [];
    private (Tool Tool, ToolDesign Design)? _found;
    private Domain.Sites.Site _site = null!;

    [Parameter]
    public Guid Id { get; set; }

    [Inject]
    public required ToolReader Reader { get; init; }

    [Inject]
    public required ChangeToolHandler Handler { get; init; }

    [Inject]
    public required CurrentActor Actor { get; init; }

    [Inject]
    public required SiteReader Sites { get; init; }

    [Inject]
    public required NavigationManager Navigation { get; init; }

    [CascadingParameter]
    public HttpContext Http { get; set; } = null!;

    [SupplyParameterFromForm]
    private ChangeToolForm In { get; set; } = null!;

    protected override async Task OnInitializedAsync()
    {
        In ??= new();
        _site = await Sites.GetAsync();
        _found = await Reader.FindAsync(Id, Http.RequestAborted);
        if (_found is null)
        {
            Http.Response.StatusCode = StatusCodes.Status404NotFound;
        }
    }

    private async Task SaveAsync()
    {
        var outcome = await Handler.HandleAsync(
            Id,
            In,
            await Actor.GetAsync(),
            Http.RequestAborted
        );
        _faults = Faults.Of<ChangeToolForm>(outcome);
        if (outcome.IsAccepted)
        {
            Navigation.NavigateTo(Routes.Tool(Id));
        }
    }

    private static double LeftShare(Tool tool) => tool.Remaining / tool.LifeLimit;

    private static string LifeWord(Tool tool) =>
        LeftShare(tool) switch
        {
            <= 0 => "life used up",
            < LittleLife => "little life left",
            _ => "life left",
        };

    private static Mark LifeMark(Tool tool) =>
        LeftShare(tool) switch
        {
            <= 0 => Mark.Failed,
            < LittleLife => Mark.Warning,
            _ => Mark.Passed,
        };

    private static string BasisWord(ChargeBasis basis) =>
        basis switch
        {
            ChargeBasis.ProcessLog => "process log",
            ChargeBasis.PlannedPath => "planned path, until the log is in",
            ChargeBasis.Stated => "operator's statement, until the log is in",
            _ => throw new ArgumentOutOfRangeException(nameof(basis), basis, null),
        };
}
