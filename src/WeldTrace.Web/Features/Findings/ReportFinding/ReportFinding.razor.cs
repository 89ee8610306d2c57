using System.Globalization;
using Microsoft.AspNetCore.Components;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Findings.ReportFinding;

public sealed partial class ReportFinding
{
    private (Vessel Vessel, VesselDesign Design)? _found;
    private IReadOnlyList<FieldFault> _faults = [];
    private Actor _actor = null!;

    [Inject]
    public required ReportFindingHandler Handler { get; init; }

    [Inject]
    public required CurrentActor Actors { get; init; }

    [Inject]
    public required NavigationManager Navigation { get; init; }

    [Inject]
    public required TimeProvider Clock { get; init; }

    [Parameter]
    public string Serial { get; set; } = "";

    [SupplyParameterFromForm]
    private ReportFindingForm In { get; set; } = null!;

    private IReadOnlyList<FieldOption> Steps =>
        [
            .. _found!.Value.Vessel.Steps.Select(s => new FieldOption(
                s.Sequence.ToString(CultureInfo.InvariantCulture),
                FormattableString.Invariant($"{s.Sequence}: {s.Title}")
            )),
        ];

    private IReadOnlyList<FieldOption> Joints =>
        [
            new("", "none"),
            .. _found!.Value.Design.Content.Joints.Select(j => new FieldOption(
                j.Code,
                $"{j.Code}: {j.Name}"
            )),
        ];

    protected override async Task OnInitializedAsync()
    {
        _actor = await Actors.GetAsync();
        _found = await Handler.FindAsync(Serial, CancellationToken.None);
        if (_found is not { } found)
        {
            Navigation.NotFound();
            return;
        }

        In ??= new()
        {
            Id = FormIdentity.OrNew(Guid.Empty, Clock),
            StepSequence = found.Vessel.NextStep?.Sequence.ToString(CultureInfo.InvariantCulture),
        };
    }

    private async Task SaveAsync()
    {
        var outcome = await Handler.HandleAsync(Serial, In, _actor, CancellationToken.None);
        _faults = Faults.Of<ReportFindingForm>(outcome);
        if (outcome.IsAccepted)
        {
            Navigation.NavigateTo(Routes.Finding(In.Id));
        }
    }
}
