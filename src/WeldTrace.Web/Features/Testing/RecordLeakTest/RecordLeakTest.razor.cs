using Microsoft.AspNetCore.Components;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Features.Testing.Logs;
using WeldTrace.Web.Files;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Testing.RecordLeakTest;

public sealed partial class RecordLeakTest
{
    /// <summary>What the button posts that adds rows instead of saving.</summary>
    public const string MoreRows = "rows";

    private const string Bubbles = "bubbles";
    private const string Tracer = "tracer";
    private const int FirstRows = 4;

    private TestFacts? _facts;
    private StagedLog? _arrived;
    private IReadOnlyList<Refusal> _notNow = [];
    private IReadOnlyList<FieldFault> _faults = [];
    private Actor _actor = null!;
    private Guid _personId;

    [Inject]
    public required RecordLeakTestHandler Handler { get; init; }

    [Inject]
    public required ArrivedReadings Arrivals { get; init; }

    [Inject]
    public required CurrentActor Actors { get; init; }

    [Inject]
    public required NavigationManager Navigation { get; init; }

    [Inject]
    public required TimeProvider Clock { get; init; }

    [Parameter]
    public string Serial { get; set; } = "";

    [Parameter]
    public int Sequence { get; set; }

    [SupplyParameterFromQuery(Name = "method")]
    private string? MethodWord { get; set; }

    [SupplyParameterFromForm]
    private RecordLeakTestForm In { get; set; } = null!;

    private LeakMethod Method =>
        MethodWord switch
        {
            Bubbles => LeakMethod.ImmersionBubble,
            Tracer => LeakMethod.TracerGas,
            _ => LeakMethod.PressureDecay,
        };

    private PressurePlan Plan => _facts!.Design.Content.Pressures;

    protected override async Task OnInitializedAsync()
    {
        _actor = await Actors.GetAsync();
        _personId = _actor.PersonId;
        _facts = await Handler.FindAsync(Serial, Sequence, _actor, CancellationToken.None);
        if (_facts is null)
        {
            Navigation.NotFound();
            return;
        }

        // A posted form must be rendered to be answered; the domain refuses what may not be recorded.
        _notNow = In is null ? TestRecord.RefusalsBefore(_facts, StepKind.LeakTest, _actor) : [];
        In ??= new RecordLeakTestForm { Id = FormIdentity.OrNew(Guid.Empty, Clock) };
        In.AddRows(FirstRows - In.Readings.Count);
        In.AddPlaces();
        _arrived = await Arrivals.FindAsync(_facts.Vessel.Id, CancellationToken.None);
    }

    private async Task SaveAsync()
    {
        if (In.Act == MoreRows)
        {
            In.AddRows(RecordLeakTestForm.AddedReadings);
            return;
        }

        var outcome = await Handler.HandleAsync(
            Serial,
            Sequence,
            Method,
            In,
            _actor,
            CancellationToken.None
        );
        var atFields =
            Method == LeakMethod.TracerGas
                ? Outcome.From([
                    .. outcome.Refusals.Select(r =>
                        r with
                        {
                            Field = RecordLeakTestForm.TracerFieldOf(r.Field),
                        }
                    ),
                ])
                : outcome;
        _faults = Faults.Of(atFields, nameof(In), In.FieldNames);
        if (outcome.IsAccepted)
        {
            Navigation.NavigateTo(Routes.LeakTest(In.Id));
        }
    }

    private string Address(LeakMethod method) =>
        method switch
        {
            LeakMethod.ImmersionBubble => $"{Routes.LeakStep(Serial, Sequence)}?method={Bubbles}",
            LeakMethod.TracerGas => $"{Routes.LeakStep(Serial, Sequence)}?method={Tracer}",
            _ => Routes.LeakStep(Serial, Sequence),
        };
}
