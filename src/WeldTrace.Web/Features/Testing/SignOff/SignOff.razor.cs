using Microsoft.AspNetCore.Components;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sites;
using WeldTrace.Domain.Testing;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Testing.SignOff;

public sealed partial class SignOff
{
    private SignOffFacts? _shown;
    private Site? _site;
    private IReadOnlyList<Refusal> _notNow = [];
    private IReadOnlyList<FieldFault> _faults = [];
    private Actor _actor = null!;

    [Inject]
    public required SignOffHandler Handler { get; init; }

    [Inject]
    public required CurrentActor Actors { get; init; }

    [Inject]
    public required SiteReader Sites { get; init; }

    [Inject]
    public required NavigationManager Navigation { get; init; }

    [Inject]
    public required TimeProvider Clock { get; init; }

    [Parameter]
    public string Serial { get; set; } = "";

    [Parameter]
    public int Sequence { get; set; }

    [SupplyParameterFromForm]
    private SignOffForm In { get; set; } = null!;

    protected override async Task OnInitializedAsync()
    {
        (_actor, _site) = (await Actors.GetAsync(), await Sites.GetAsync());
        _shown = await Handler.FindAsync(Serial, Sequence, _actor, CancellationToken.None);
        if (_shown is null)
        {
            Navigation.NotFound();
            return;
        }

        _notNow = In is null
            ? StepSignOff.RefusalsBefore(_shown.Facts, _shown.WeldedBy, _actor)
            : [];
        In ??= new()
        {
            Id = FormIdentity.OrNew(Guid.Empty, Clock),
            Examination = ExaminationForm.For(_shown.Facts),
        };
        In.Examination.FillRows();
    }

    // The domain names what it refuses by its own fields; those of the examination stand in a form of their own.
    private static Outcome AtFields(Outcome outcome) =>
        Outcome.From([
            .. outcome.Refusals.Select(r =>
                r.Field is { } field && typeof(ExaminationForm).GetProperty(field) is not null
                    ? r with
                    {
                        Field = ExaminationForm.Name(field),
                    }
                    : r
            ),
        ]);

    private async Task SignAsync()
    {
        var outcome = await Handler.HandleAsync(
            Serial,
            Sequence,
            In,
            _actor,
            CancellationToken.None
        );
        _faults = Faults.Of(AtFields(outcome), nameof(In), In.FieldNames);
        if (outcome.IsAccepted)
        {
            Navigation.NavigateTo(Routes.Vessel(Serial));
        }
    }
}
