using Microsoft.AspNetCore.Components;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Designs.Show;

public sealed partial class ShowDesign
{
    private IReadOnlyList<FieldFault> _faults = [];
    private DesignView? _view;
    private Domain.Sites.Site _site = null!;
    private string _name = "";

    [Parameter]
    public Guid Id { get; set; }

    [Inject]
    public required DesignReader Reader { get; init; }

    [Inject]
    public required ReleaseDesignHandler Handler { get; init; }

    [Inject]
    public required CurrentActor Actor { get; init; }

    [Inject]
    public required SiteReader Sites { get; init; }

    [Inject]
    public required NavigationManager Navigation { get; init; }

    [CascadingParameter]
    public HttpContext Http { get; set; } = null!;

    [SupplyParameterFromForm(FormName = "release")]
    private ReleaseDesignForm In { get; set; } = null!;

    [SupplyParameterFromForm(FormName = "revise")]
    private ReviseDesignForm New { get; set; } = null!;

    protected override async Task OnInitializedAsync()
    {
        In ??= new();
        New ??= new();
        _site = await Sites.GetAsync();
        _name = (await Actor.GetAsync()).PrintedName;
        _view = await Reader.FindAsync(Id, Http.RequestAborted);
        if (_view is null)
        {
            Http.Response.StatusCode = StatusCodes.Status404NotFound;
        }
    }

    private async Task ReleaseAsync()
    {
        var outcome = await Handler.ReleaseAsync(
            Id,
            In,
            await Actor.GetAsync(),
            Http.RequestAborted
        );
        _faults = Faults.Of<ReleaseDesignForm>(outcome);
        if (outcome.IsAccepted)
        {
            Navigation.NavigateTo(Routes.Design(Id));
        }
    }

    private async Task ReviseAsync()
    {
        var next = await Handler.ReviseAsync(Id, New, await Actor.GetAsync(), Http.RequestAborted);
        _faults = Faults.Of<ReviseDesignForm>(next.WithoutValue(), "New");
        if (next.IsAccepted)
        {
            Navigation.NavigateTo(Routes.EditDesign(next.Value.Id));
        }
    }
}
