using System.Globalization;
using Microsoft.AspNetCore.Components;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Testing.TakeInSection;

public sealed partial class TakeInSection
{
    private static readonly IReadOnlyList<FieldOption> Scales =
    [
        new(nameof(SectionScale.Macroscopic), "macroscopic"),
        new(nameof(SectionScale.Microscopic), "microscopic"),
    ];

    private TestFacts? _facts;
    private IReadOnlyList<LimitTable> _tables = [];
    private IReadOnlyList<Refusal> _notNow = [];
    private IReadOnlyList<FieldFault> _faults = [];
    private Actor _actor = null!;
    private Guid _personId;

    [Inject]
    public required TakeInSectionHandler Handler { get; init; }

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
    private TakeInSectionForm In { get; set; } = null!;

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

    private IReadOnlyList<FieldOption> Tables =>
        [
            new("", "choose"),
            .. _tables.Select(t => new FieldOption(
                t.Id.ToString(),
                $"{t.Label}: {t.Text.Title}{(t.IsChecked ? "" : " (not checked against an own copy)")}"
            )),
        ];

    protected override async Task OnInitializedAsync()
    {
        _actor = await Actors.GetAsync();
        _personId = _actor.PersonId;
        // Before the facts: the page is drawn between two waits, and it draws the tables as soon as the facts are there.
        _tables = await Handler.TablesAsync(CancellationToken.None);
        _facts = await Handler.FindAsync(Serial, Sequence, _actor, CancellationToken.None);
        if (_facts is null)
        {
            Navigation.NotFound();
            return;
        }

        _notNow = In is null ? TestRecord.RefusalsBefore(_facts, StepKind.Section, _actor) : [];
        In ??= new()
        {
            Id = FormIdentity.OrNew(Guid.Empty, Clock),
            Method = "ISO 17639",
            Plane = "across the weld",
            Limits = _tables is [var only] ? only.Id.ToString() : null,
        };
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
        _faults = Faults.Of<TakeInSectionForm>(outcome);
        if (outcome.IsAccepted)
        {
            Navigation.NavigateTo(Routes.MeasureSection(In.Id));
        }
    }
}
