using System.Globalization;
using Microsoft.AspNetCore.Components;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Tools.Designs;

public sealed partial class ShowToolDesign
{
    private IReadOnlyList<FieldFault> _faults = [];
    private IReadOnlyList<FieldFault> _fileFaults = [];
    private ToolDesignView? _view;

    [Parameter]
    public Guid Id { get; set; }

    [Inject]
    public required ToolUpkeepHandler Handler { get; init; }

    [Inject]
    public required CurrentActor Actor { get; init; }

    [Inject]
    public required NavigationManager Navigation { get; init; }

    [CascadingParameter]
    public HttpContext Http { get; set; } = null!;

    [CascadingParameter]
    public UnitSystem SiteUnits { get; set; }

    [SupplyParameterFromForm(FormName = "upkeep")]
    private ToolUpkeepForm In { get; set; } = null!;

    [SupplyParameterFromForm(FormName = "evidence")]
    private LifeEvidenceForm Paper { get; set; } = null!;

    private ToolDesign Design => _view!.Design;

    protected override async Task OnInitializedAsync()
    {
        _view = Http.Found(await Handler.FindAsync(Id, Http.RequestAborted));
        Paper ??= new();
        In ??= Known(_view?.Design.Upkeep);
    }

    private async Task LayDownAsync()
    {
        var outcome = await Handler.LayDownAsync(Id, In, await Actor.GetAsync(), default);
        _faults = Faults.Of<ToolUpkeepForm>(outcome);
        Leave(outcome);
    }

    private async Task FileAsync()
    {
        var outcome = await Handler.FileEvidenceAsync(Id, Paper, await Actor.GetAsync(), default);
        _fileFaults = Faults.Of<LifeEvidenceForm>(outcome, nameof(Paper));
        Leave(outcome);
    }

    private void Leave(Outcome outcome)
    {
        if (outcome.IsAccepted)
        {
            Navigation.NavigateTo(Routes.ToolDesign(Id));
        }
    }

    private static ToolUpkeepForm Known(ToolUpkeep? upkeep) =>
        new()
        {
            LeastPinLength = upkeep?.LeastPinLength.Digits,
            LeastPinDiameter = upkeep?.LeastPinDiameter.Digits,
            InspectEvery = upkeep?.InspectEvery?.Metres.ToString(
                "0.######",
                CultureInfo.InvariantCulture
            ),
            InspectEveryDays = upkeep?.InspectEveryDays?.ToString(CultureInfo.InvariantCulture),
            InspectionProcedure = upkeep?.InspectionProcedure,
        };
}
