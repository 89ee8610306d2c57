using System.Globalization;
using Microsoft.AspNetCore.Components;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Units;
using WeldTrace.Web.Components.Charts;
using WeldTrace.Web.Components.Figures;
using WeldTrace.Web.Components.Marks;
using WeldTrace.Web.Components.Runs;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Welding.ShowRun;

public sealed partial class ShowRun
{
    private RunView? _view;
    private bool _mayCorrect;
    private bool _mayWeld;

    [Parameter]
    public Guid Id { get; set; }

    [Inject]
    public required RunReader Reader { get; init; }

    [CascadingParameter]
    public UnitSystem SiteUnits { get; set; }

    [CascadingParameter]
    public HttpContext Http { get; set; } = null!;

    private WeldRun Run => _view!.Records.Run;

    private ProcedureContent Content => _view!.Records.Revision.Content;

    private string StateWord =>
        WeldRun.StateWord(Run.State) + (Run.IsSealed ? ", signed" : ", not signed yet");

    private Mark StateShape =>
        Run switch
        {
            { State: WeldRunState.Interrupted } => Mark.Failed,
            { IsSealed: true } => Mark.Passed,
            _ => Mark.InProgress,
        };

    private IReadOnlyList<RuleLine> Gate =>
        RuleLines.Of(Run.Gate, Routes.PrepareJoint(Run.VesselSerial, Run.JointCode), isPast: true);

    private string ChartLabel =>
        $"Channels of the process log over time. {Run.Log!.Excursions.Count} excursions; least, mean and greatest values stand in the table.";

    protected override async Task OnInitializedAsync()
    {
        _view = await Reader.FindAsync(Id, Http.RequestAborted);
        _mayCorrect =
            Http.User.IsInRole(nameof(Role.Engineer))
            && _view?.Records.Run is { IsSealed: false, Log: not null };
        _mayWeld = Http.User.IsInRole(nameof(Role.Operator));
        if (_view is null)
        {
            Http.Response.StatusCode = StatusCodes.Status404NotFound;
        }
    }

    private static IReadOnlyList<ChartBand> Bands(LogSummary log) =>
        [
            .. log.Excursions.Select(
                (found, i) =>
                    new ChartBand(
                        (i + 1).ToString(CultureInfo.InvariantCulture),
                        found.StartSeconds,
                        found.EndSeconds
                    )
            ),
        ];

    private Unit PlaceUnit => SiteUnit.For<Length>(SiteUnits);

    private static IReadOnlyList<ChartBand> Phases(LogSummary log) =>
        [.. log.Phases.Select(p => new ChartBand(p.Phase, p.StartSeconds, p.EndSeconds))];

    private IReadOnlyList<ChartMark> Marks() => [.. _view!.Indications.Index().SelectMany(Moment)];

    private IEnumerable<ChartMark> Moment((int Index, SeamIndication Item) found) =>
        Run.SecondsAt(found.Item.Along) is { } seconds
            ? [new(RunSeams.Letter(found.Index), found.Item.Word, seconds)]
            : [];

    private IReadOnlyList<ChartPlace> Places(LogSummary log) =>
        [
            .. (log.Places ?? []).Select(p => new ChartPlace(
                p.Seconds,
                PlaceUnit.FromSi(p.Metres),
                Run.TrackRadius > Length.Zero
                    ? Angle.FromRadians(p.Metres / Run.TrackRadius.Metres).Degrees
                    : null
            )),
        ];
}
