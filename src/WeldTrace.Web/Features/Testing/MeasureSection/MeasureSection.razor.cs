using Microsoft.AspNetCore.Components;
using WeldTrace.Domain.Records;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Testing.MeasureSection;

public sealed partial class MeasureSection
{
    private const string NoNumber = "choose";

    private MeasuredSection? _found;
    private IReadOnlyList<FieldFault> _scaleFaults = [];
    private IReadOnlyList<FieldFault> _markFaults = [];
    private IReadOnlyList<FieldFault> _strikeFaults = [];
    private IReadOnlyList<FieldFault> _concludeFaults = [];

    [Inject]
    public required MeasureSectionHandler Handler { get; init; }

    [Inject]
    public required CurrentActor Actors { get; init; }

    [Inject]
    public required NavigationManager Navigation { get; init; }

    [CascadingParameter]
    public HttpContext Http { get; set; } = null!;

    [Parameter]
    public Guid Id { get; set; }

    [SupplyParameterFromForm(FormName = "section-scale")]
    private ScaleForm Scale { get; set; } = null!;

    [SupplyParameterFromForm(FormName = "section-mark")]
    private MarkForm Mark { get; set; } = null!;

    [SupplyParameterFromForm(FormName = "section-strike")]
    private StrikeForm Strike { get; set; } = null!;

    [SupplyParameterFromForm(FormName = "section-conclude")]
    private ConcludeForm End { get; set; } = null!;

    protected override async Task OnInitializedAsync()
    {
        _found = Http.Found(await Handler.FindAsync(Id, Http.RequestAborted));
        Scale ??= ScaleForm.Of(_found?.Section.Picture?.SetUp);
        Mark ??= new();
        Strike ??= new();
        End ??= new();
    }

    private async Task SetScaleAsync()
    {
        var outcome = await Handler.SetScaleAsync(
            Id,
            Scale,
            await Actors.GetAsync(),
            CancellationToken.None
        );
        _scaleFaults = Faults.Of<ScaleForm>(outcome, nameof(Scale));
        Leave(outcome, Routes.MeasureSection(Id));
    }

    private async Task MeasureAsync()
    {
        var outcome = await Handler.MeasureAsync(
            Id,
            Mark,
            await Actors.GetAsync(),
            CancellationToken.None
        );
        _markFaults = Faults.Of<MarkForm>(outcome, nameof(Mark));
        Leave(outcome, Routes.MeasureSection(Id));
    }

    private async Task StrikeAsync()
    {
        var outcome = await Handler.StrikeAsync(
            Id,
            Strike,
            await Actors.GetAsync(),
            CancellationToken.None
        );
        _strikeFaults = Faults.Of<StrikeForm>(outcome, nameof(Strike));
        Leave(outcome, Routes.MeasureSection(Id));
    }

    private async Task ConcludeAsync()
    {
        var outcome = await Handler.ConcludeAsync(
            Id,
            End,
            await Actors.GetAsync(),
            CancellationToken.None
        );
        _concludeFaults = Faults.Of<ConcludeForm>(outcome, nameof(End));
        Leave(outcome, Routes.Section(Id));
    }

    private void Leave(Outcome outcome, string address)
    {
        if (outcome.IsAccepted)
        {
            Navigation.NavigateTo(address);
        }
    }
}
