using Microsoft.AspNetCore.Components;
using WeldTrace.Documents.Drawings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Testing.PressureTesting;

public sealed partial class PressureTesting
{
    private TestFacts? _facts;
    private PressureLadderPlot _plot = new() { Stages = [] };
    private PressureTest? _test;
    private Actor _actor = null!;
    private IReadOnlyList<Refusal> _notNow = [];

    [Inject]
    public required PressureTestingHandler Handler { get; init; }

    [Inject]
    public required CurrentActor Actors { get; init; }

    [Inject]
    public required NavigationManager Navigation { get; init; }

    [CascadingParameter]
    public HttpContext Http { get; set; } = null!;

    [Parameter]
    public string Serial { get; set; } = "";

    [Parameter]
    public int Sequence { get; set; }

    private PressurePlan Plan => _facts!.Design.Content.Pressures;

    private bool IsBeginning => _test is null || IsPosted(BeginPressureTest.FormName);

    protected override async Task OnInitializedAsync()
    {
        _actor = await Actors.GetAsync();
        _facts = await Handler.FindAsync(Serial, Sequence, _actor, CancellationToken.None);
        if (_facts is null)
        {
            Navigation.NotFound();
            return;
        }

        _test = _facts.Unsigned.OfType<PressureTest>().FirstOrDefault();
        _plot = _test is null
            ? LadderSchedule.Of(Plan)
            : LadderSchedule.Of(
                Plan,
                _test,
                await Handler.TracesAsync(_test, CancellationToken.None)
            );
        if (_test is null && !HttpMethods.IsPost(Http.Request.Method))
        {
            _notNow = TestRecord.RefusalsBefore(_facts, StepKind.PressureTest, _actor);
        }
    }

    private bool IsPosted(string form) =>
        Http.Request.HasFormContentType && Http.Request.Form["_handler"] == form;
}
