using Microsoft.AspNetCore.Components;
using WeldTrace.Domain.Tooling;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Tools.Show;

public sealed partial class ShowTool
{
    private static readonly IReadOnlyList<FieldOption> Acts =
    [
        new(nameof(ToolAct.PutInService), "put in service"),
        new(nameof(ToolAct.Hold), "hold until someone clears it"),
        new(nameof(ToolAct.Retire), "retire for good"),
    ];

    private static readonly IReadOnlyList<FieldOption> Causes =
    [
        .. Enum.GetValues<RetirementReason>()
            .Select(r => new FieldOption(r.ToString(), ToolWords.Of(r))),
    ];

    private IReadOnlyList<FieldFault> _faults = [];
    private ToolView? _view;
    private ToolFigures _figures = null!;
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

    [SupplyParameterFromQuery(Name = "failure")]
    private string? Failure { get; set; }

    [SupplyParameterFromForm]
    private ChangeToolForm In { get; set; } = null!;

    private Tool Tool => _view!.Tool;

    protected override async Task OnInitializedAsync()
    {
        In ??= new();
        _site = await Sites.GetAsync();
        _view = Http.Found(await Reader.FindAsync(Id, Http.RequestAborted));
        if (_view is not null)
        {
            _figures = new ToolFigures(
                _view,
                Enum.TryParse<RetirementReason>(Failure, out var mode) && Enum.IsDefined(mode)
                    ? mode
                    : null
            );
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
}
