using Microsoft.AspNetCore.Components;
using WeldTrace.Domain.Preparation;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sites;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Vessels.Prepare;

public sealed partial class PrepareJoint
{
    private IReadOnlyList<FieldFault> _cleanFaults = [];
    private IReadOnlyList<FieldFault> _fitFaults = [];
    private JointPreparation? _view;
    private RuleVerdict _verdict = null!;
    private Site _site = null!;

    [Parameter]
    public string Serial { get; set; } = "";

    [Parameter]
    public string JointCode { get; set; } = "";

    [Inject]
    public required PrepareJointHandler Handler { get; init; }

    [Inject]
    public required CurrentActor Actor { get; init; }

    [Inject]
    public required SiteReader Sites { get; init; }

    [Inject]
    public required TimeProvider Clock { get; init; }

    [Inject]
    public required NavigationManager Navigation { get; init; }

    [CascadingParameter]
    public HttpContext Http { get; set; } = null!;

    [SupplyParameterFromForm(FormName = "clean")]
    private CleanJointForm Clean { get; set; } = null!;

    [SupplyParameterFromForm(FormName = "fit-up")]
    private FitUpForm Fit { get; set; } = null!;

    protected override async Task OnInitializedAsync()
    {
        Clean ??= new();
        Fit ??= new();
        _site = await Sites.GetAsync(Http.RequestAborted);
        var view = Http.Found(await Handler.FindAsync(Serial, JointCode, Http.RequestAborted));
        if (view is not null)
        {
            _verdict = PreparationRules.ForWelding(
                JointCode,
                view.Procedure?.Content,
                view.Facts,
                Clock.GetUtcNow()
            );
        }

        _view = view;
    }

    private async Task CleanAsync()
    {
        var outcome = await Handler.CleanAsync(
            Serial,
            JointCode,
            Clean,
            await Actor.GetAsync(),
            default
        );
        _cleanFaults = Faults.Of<CleanJointForm>(outcome, nameof(Clean));
        Leave(outcome);
    }

    private async Task FitUpAsync()
    {
        var outcome = await Handler.FitUpAsync(
            Serial,
            JointCode,
            Fit,
            await Actor.GetAsync(),
            default
        );
        _fitFaults = Faults.Of<FitUpForm>(outcome, nameof(Fit));
        Leave(outcome);
    }

    private void Leave(Outcome outcome)
    {
        if (outcome.IsAccepted)
        {
            Navigation.NavigateTo(Routes.PrepareJoint(Serial, JointCode));
        }
    }
}
