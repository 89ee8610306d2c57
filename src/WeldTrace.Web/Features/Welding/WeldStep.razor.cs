using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.WebUtilities;
using WeldTrace.Domain.Concessions;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;
using WeldTrace.Domain.Welding;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Components.Marks;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Welding;

public sealed partial class WeldStep
{
    private WeldStepView? _view;
    private IReadOnlyList<FieldFault> _faults = [];
    private bool _isPost;

    [Parameter]
    public string Serial { get; set; } = "";

    [Parameter]
    public int Sequence { get; set; }

    /// <summary>Number of the finding whose repair is welded; null for a step of the route.</summary>
    [Parameter]
    public int? Number { get; set; }

    [Inject]
    public required WeldStepReader Reader { get; init; }

    [Inject]
    public required StartRunHandler Handler { get; init; }

    [Inject]
    public required CurrentActor Actor { get; init; }

    [Inject]
    public required TimeProvider Clock { get; init; }

    [Inject]
    public required NavigationManager Navigation { get; init; }

    [CascadingParameter]
    public HttpContext Http { get; set; } = null!;

    [SupplyParameterFromQuery(Name = "tool")]
    private string? Tool { get; set; }

    [SupplyParameterFromQuery(Name = "machine")]
    private string? Machine { get; set; }

    [SupplyParameterFromForm(FormName = "start-run")]
    private StartRunForm In { get; set; } = null!;

    private WeldGateFacts Facts => _view!.Facts;

    private WeldTarget Target => new(Serial, Sequence, Number);

    private string Title => $"{Facts.Vessel.Serial} {Heading}";

    private string Heading =>
        $"{Facts.Joint.Code} pass {Facts.Pass.Number}"
        + (Facts.Repair is { } repair ? $", repair of {repair.Label}" : "");

    private string? PlaceText =>
        Facts.Repair?.PlannedRepair?.Place is { } place
            ? FormattableString.Invariant(
                $"{place.Start.Degrees:0.0}° to {place.End.Degrees:0.0}° from the start of the pass"
            )
            : null;

    private Mark StepMark =>
        Facts.Step.State switch
        {
            StepState.Waiting => Mark.Waiting,
            StepState.Ready => Mark.Ready,
            StepState.InProgress => Mark.InProgress,
            StepState.Passed => Mark.Passed,
            StepState.Failed => Mark.Failed,
            _ => Mark.Waived,
        };

    private IReadOnlyList<RuleLine> Lines =>
        RuleLines.Of(
            _view!.Gate,
            Routes.PrepareJoint(Facts.Vessel.Serial, Facts.Joint.Code),
            Concessions
        );

    // The concession that is asked for already, or for those who may sign one the way to ask.
    private IEnumerable<RuleLink> Concessions(string ruleId)
    {
        if (
            _view!.Gate.Single(v => v.RuleId == ruleId).Standing != RuleStanding.Forbids
            || ConcessionRules.AgainstWaiving(ruleId, Facts) is not null
        )
        {
            yield break;
        }

        if (ConcessionRules.Open(ruleId, Facts) is { } open)
        {
            yield return new("Concession, not signed yet", Routes.Concession(open.Id));
        }
        else if (Facts.Welder.HasAny(Concession.Signers))
        {
            yield return new(
                $"Ask for a concession of {ruleId}",
                With(
                    Routes.AskConcession(Facts.Vessel.Serial, Facts.Step.Sequence, ruleId),
                    Facts.Machine?.Name,
                    Facts.Tool?.Mark
                )
            );
        }
    }

    private string? MachineFault =>
        _view!.Machine is null && !string.IsNullOrWhiteSpace(Machine)
            ? $"No machine is named '{Machine}'. Scan again, or choose one below."
        : In.Machine is null ? null
        : _faults.FirstOrDefault(f => f.Field == "In.Machine")?.Sentence;

    private string? ToolFault =>
        Facts.Tool is null && !string.IsNullOrWhiteSpace(Tool)
            ? $"No tool is marked '{Tool}'. Scan again, or choose one below."
            : null;

    protected override async Task OnInitializedAsync()
    {
        _isPost = HttpMethods.IsPost(Http.Request.Method);
        In ??= new();
        if (In.Id == Guid.Empty)
        {
            In.Id = Guid.CreateVersion7(Clock.GetUtcNow());
        }

        _view = await Reader.FindAsync(
            Target,
            In.Tool ?? Tool,
            In.Machine ?? Machine,
            await Actor.GetAsync(Http.RequestAborted),
            Http.RequestAborted
        );
        if (_view is null)
        {
            Http.Response.StatusCode = StatusCodes.Status404NotFound;
        }
    }

    private async Task StartAsync()
    {
        var outcome = await Handler.HandleAsync(
            Target,
            In,
            await Actor.GetAsync(Http.RequestAborted),
            Http.RequestAborted
        );
        _faults = Faults.Of<StartRunForm>(outcome);
        if (outcome.IsAccepted)
        {
            Navigation.NavigateTo(Routes.EndRun(In.Id));
        }
    }

    private string With(string? machine, string? tool) => With(Target.Address, machine, tool);

    private static string With(string address, string? machine, string? tool) =>
        QueryHelpers.AddQueryString(
            address,
            new Dictionary<string, string?> { ["machine"] = machine, ["tool"] = tool }
                .Where(pair => !string.IsNullOrWhiteSpace(pair.Value))
                .ToDictionary(pair => pair.Key, pair => pair.Value)
        );

    private static string? Chosen(string? found, string? typed) => found ?? typed;
}
