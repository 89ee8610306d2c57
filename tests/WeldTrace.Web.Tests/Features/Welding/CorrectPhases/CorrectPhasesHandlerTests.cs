using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Welding;
using WeldTrace.Persistence.RunFigures;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Welding.CorrectPhases;
using WeldTrace.Web.LogJudging;

namespace WeldTrace.Web.Tests.Features.Welding.CorrectPhases;

public sealed class CorrectPhasesHandlerTests(PostgresServerFixture server)
{
    [Fact]
    public async Task HandleAsync_LaterStart_JudgesAnewAndKeepsWhatWasFound()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await BroughtAsync(shop);
        var before = await shop.RunAsync(id);
        var figure = await FigureAsync(shop, id);

        var outcome = await CorrectAsync(shop, id, form => form.Steady = Later(form.Steady, 5));

        Accept.All(outcome);
        var after = await shop.RunAsync(id);
        var correction = Assert.Single(after.PhaseCorrections!);
        Assert.Equal(before.Log!.Phases, correction.Before);
        Assert.Equal(
            Start(before) + 5,
            after.Log!.Phases.First(p => p.Phase == LoggedPhase.Traverse).StartSeconds,
            1
        );
        Assert.True(Force(after).Samples < Force(before).Samples);
        Assert.Equal(Force(after).MeanSi, (await FigureAsync(shop, id)).MeanSi);
        Assert.NotEqual(figure.MeanSi, Force(after).MeanSi);
        var entries = await shop.Database.ReadAsync(db =>
            db.LedgerEntries.CountAsync(e => e.RecordId == id)
        );
        Assert.Equal(after.Version, entries);
    }

    [Theory]
    [InlineData(-1.5, true)]
    [InlineData(2, false)]
    public async Task HandleAsync_DwellOutsideItsWindow_IsAnExcursion(double later, bool isAbove)
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await BroughtAsync(shop);

        // The window is 2 to 4 s, and the tool stood for 3 s.
        Accept.All(await CorrectAsync(shop, id, form => form.Depth = Later(form.Depth, later)));

        var excursion = Assert.Single(
            (await shop.RunAsync(id)).Log!.HardExcursions,
            e => e.Parameter == WeldParameter.DwellTime
        );
        Assert.Equal((isAbove, LoggedPhase.Dwell), (excursion.IsAbove, excursion.Phase));
        Assert.Equal(3 - later, excursion.ExtremeSi, 0.15);
        var findings = await shop.Database.ReadAsync(db => db.Findings.ToListAsync());
        Assert.Contains(
            findings,
            f => f.Description.Contains("Dwell time", StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task HandleAsync_TimesOutOfOrder_NamesTheField()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await BroughtAsync(shop);

        var outcome = await CorrectAsync(shop, id, form => form.Travel = "0");

        Assert.Contains(outcome.Refusals, r => r.Field == nameof(CorrectPhasesForm.Travel));
        Assert.Null((await shop.RunAsync(id)).PhaseCorrections);
    }

    [Fact]
    public async Task HandleAsync_ByTheOperator_IsRefused()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await BroughtAsync(shop);

        var outcome = await CorrectAsync(shop, id, _ => { }, SamplePeople.Operator);

        Assert.False(outcome.IsAccepted);
    }

    private static async Task<Guid> BroughtAsync(WeldShop shop)
    {
        var id = await shop.EndedAsync();
        Assert.True((await shop.BringAsync(id, SampleLogs.Good())).IsAccepted);
        return id;
    }

    private static async Task<Outcome> CorrectAsync(
        WeldShop shop,
        Guid id,
        Action<CorrectPhasesForm> edit,
        Actor? actor = null
    )
    {
        var form = CorrectPhasesForm.Of((await shop.RunAsync(id)).Log!.Phases);
        form.Reason = "The ramp lasted longer.";
        edit(form);
        return await new CorrectPhasesHandler(
            shop.Database,
            new SignalWatch(shop.Database),
            shop.Clock
        ).HandleAsync(id, form, actor ?? SamplePeople.Engineer, CancellationToken.None);
    }

    private static Task<RunFigureRow> FigureAsync(WeldShop shop, Guid id) =>
        shop.Database.ReadAsync(db =>
            db.RunFigures.AsNoTracking()
                .SingleAsync(f => f.RunId == id && f.Parameter == WeldParameter.AxialForce)
        );

    private static LoggedParameter Force(WeldRun run) =>
        run.Log!.Parameters.First(p => p.Parameter == WeldParameter.AxialForce);

    private static double Start(WeldRun run) =>
        run.Log!.Phases.First(p => p.Phase == LoggedPhase.Traverse).StartSeconds;

    private static string Later(string? text, double seconds) =>
        FormattableString.Invariant(
            $"{double.Parse(text!, System.Globalization.CultureInfo.InvariantCulture) + seconds}"
        );
}
