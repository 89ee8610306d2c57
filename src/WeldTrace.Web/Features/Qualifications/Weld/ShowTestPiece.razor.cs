using Microsoft.AspNetCore.Components;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sites;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Qualifications.Weld;

public sealed partial class ShowTestPiece
{
    private IReadOnlyList<FieldFault> _faults = [];
    private IReadOnlyList<FieldFault> _discardFaults = [];
    private IReadOnlyList<string> _weldFaults = [];
    private TestPieceView? _view;
    private Site _site = null!;
    private string _name = "";

    [Parameter]
    public Guid Id { get; set; }

    [Inject]
    public required TestPieceHandler Handler { get; init; }

    [Inject]
    public required CurrentActor Actor { get; init; }

    [Inject]
    public required SiteReader Sites { get; init; }

    [Inject]
    public required NavigationManager Navigation { get; init; }

    [CascadingParameter]
    public HttpContext Http { get; set; } = null!;

    [SupplyParameterFromForm(FormName = "finish")]
    private FinishPieceForm In { get; set; } = null!;

    [SupplyParameterFromForm(FormName = "discard")]
    private DiscardPieceForm Out { get; set; } = null!;

    private TestPiece Piece => _view!.Piece;

    protected override async Task OnInitializedAsync()
    {
        In ??= new();
        Out ??= new();
        _site = await Sites.GetAsync(Http.RequestAborted);
        _name = (await Actor.GetAsync(Http.RequestAborted)).PrintedName;
        _view = Http.Found(await Handler.FindAsync(Id, Http.RequestAborted));
        _weldFaults =
            _view?.Piece.State == TestPieceState.Welded
                ? TestPieceRules.Faults(_view.Piece, _view.Planned)
                : [];
    }

    private async Task FinishAsync()
    {
        var outcome = await Handler.FinishAsync(
            Id,
            In,
            await Actor.GetAsync(),
            Http.RequestAborted
        );
        _faults = Faults.Of<FinishPieceForm>(outcome);
        Leave(outcome);
    }

    private async Task DiscardAsync()
    {
        var outcome = await Handler.DiscardAsync(
            Id,
            Out,
            await Actor.GetAsync(),
            Http.RequestAborted
        );
        _discardFaults = Faults.Of<DiscardPieceForm>(outcome, nameof(Out));
        Leave(outcome);
    }

    private void Leave(Outcome outcome)
    {
        if (outcome.IsAccepted)
        {
            Navigation.NavigateTo(Routes.TestPiece(Id));
        }
    }
}
