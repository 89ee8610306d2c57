using Microsoft.AspNetCore.Components;
using WeldTrace.Domain.Welding;
using WeldTrace.ProcessLogs;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Files;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Welding.ReadLog;

public sealed partial class ReadLog
{
    private IReadOnlyList<FieldFault> _faults = [];
    private IReadOnlyList<LogProblem> _problems = [];
    private ReadLogView? _view;
    private bool _isRead;

    [Parameter]
    public Guid Id { get; set; }

    [Parameter]
    public Guid Upload { get; set; }

    [SupplyParameterFromQuery(Name = "map")]
    private string? Map { get; set; }

    [Inject]
    public required ReadLogHandler Handler { get; init; }

    [Inject]
    public required CurrentActor Actor { get; init; }

    [Inject]
    public required NavigationManager Navigation { get; init; }

    [CascadingParameter]
    public HttpContext Http { get; set; } = null!;

    [SupplyParameterFromForm(FormName = "read-log")]
    private ReadLogForm In { get; set; } = null!;

    private bool IsMapping => _view!.Remembered is null || Map == "new" || In.IsNewMapping;

    protected override async Task OnInitializedAsync()
    {
        In ??= new();
        _view = await Handler.FindAsync(Id, Upload, Http.RequestAborted);
        if (_view is null)
        {
            Http.Response.StatusCode = StatusCodes.Status404NotFound;
            return;
        }

        if (_view.Run.State == WeldRunState.Running || _view.Run.Log is not null)
        {
            Navigation.NavigateTo(NextOfRun.Address(_view.Run));
        }
        else if (_view.Staged is null)
        {
            Navigation.NavigateTo(Routes.BringLog(Id) + "?refused=" + StagedLogs.Gone.Code);
        }

        _problems = IsMapping && _view.Preview is not null ? [] : _view.Problems;
        if (In.Columns.Count == 0 && _view.Preview is { } preview)
        {
            In.Columns = PostedMapping.Fill(preview.Guess);
        }
    }

    private async Task TakeAsync()
    {
        var result = await Handler.HandleAsync(
            Id,
            Upload,
            In,
            await Actor.GetAsync(Http.RequestAborted),
            Http.RequestAborted
        );
        if (result.IsAccepted)
        {
            Navigation.NavigateTo(Routes.SignRun(Id));
        }

        _faults = Faults.Of<ReadLogForm>(result.Outcome);
        (_problems, _isRead) = (result.Problems, true);
    }
}
