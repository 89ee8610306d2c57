using System.Globalization;
using Microsoft.AspNetCore.Components;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sectioning;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering.Paths;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Testing.RecordSection;

public sealed partial class RecordSection
{
    // More than a photograph may have, so that one too large is told so instead of being cut off.
    private const int RequestBytes = 256 * 1024 * 1024;

    private static readonly IReadOnlyList<FieldOption> Imperfections =
    [
        new("", "choose"),
        .. Enum.GetValues<Imperfection>()
            .Select(i => new FieldOption(i.ToString(), SectionExamination.ImperfectionWord(i))),
    ];

    private static readonly IReadOnlyList<FieldOption> Sides =
    [
        new("", "in the middle, or none"),
        new(nameof(WeldSide.Advancing), "advancing side"),
        new(nameof(WeldSide.Retreating), "retreating side"),
    ];

    private TestFacts? _facts;
    private IReadOnlyList<Refusal> _notNow = [];
    private IReadOnlyList<FieldFault> _faults = [];
    private Actor _actor = null!;
    private Guid _personId;

    [Inject]
    public required RecordSectionHandler Handler { get; init; }

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

    [SupplyParameterFromForm]
    private RecordSectionForm In { get; set; } = null!;

    private IReadOnlyList<FieldOption> Passes =>
        [
            new("", "all passes show"),
            .. (_facts!.Design.Content.Joint(_facts.Step.JointCode)?.Passes ?? []).Select(
                p => new FieldOption(
                    p.Number.ToString(CultureInfo.InvariantCulture),
                    FormattableString.Invariant($"pass {p.Number}")
                )
            ),
        ];

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

        _notNow = In is null ? TestRecord.RefusalsBefore(_facts, StepKind.Section, _actor) : [];
        In ??= new() { Id = FormIdentity.OrNew(Guid.Empty, Clock) };
    }

    private async Task SaveAsync()
    {
        var outcome = await Handler.HandleAsync(
            Serial,
            Sequence,
            In,
            _actor,
            CancellationToken.None
        );
        _faults = Faults.Of<RecordSectionForm>(outcome);
        if (outcome.IsAccepted)
        {
            Navigation.NavigateTo(Routes.Section(In.Id));
        }
    }
}
