using WeldTrace.Web.Demo;

namespace WeldTrace.Browser.Tests.Journeys;

/// <summary>The live page of the bench stays fluent after a stage whose log has 20,000 readings.</summary>
public sealed class BenchFluencyTests(SiteFixture shared)
{
    private const int Readings = 20_000;

    /// <summary>
    /// Time from a key to the next picture that is noticed as delay, in ms; three times the 100 ms up to which an answer is felt as
    /// immediate (Nielsen, Usability Engineering, 1993), because tests run on busy machines.
    /// </summary>
    private const double SlowestKey = 300;

    private const int MostBytes = 200_000;

    [Fact]
    public async Task LivePage_WithTwentyThousandReadings_AnswersEachKey()
    {
        await using var workshop = await OwnWorkshop.OpenAsync(shared);
        await using var visitor = await workshop.SignInAsync(DemoPeople.Inspector);
        await visitor.GoToAsync("/vessels/NR10-0003/pressure/90");
        await BenchEntering.BeginByStrainAsync(visitor);
        await visitor.SeesAsync("Stage 1 of");
        await BenchEntering.HandInAsync(
            visitor,
            "Or: pressure log of this stage",
            "hold.csv",
            "text/csv",
            BenchEntering.Log(
                Readings,
                0.1,
                t => t < 240 ? t * 40.3 / 240 : 40.3 - (t * 1e-6),
                _ => 18.4
            )
        );
        await visitor.PressAsync("Record stage 1");
        await visitor.SeesAsync("Stage 2 of");
        await visitor.FillAsync("gauge R1 round the shell after the return to zero", "61");
        await visitor.PressAsync("Record stage 2");
        await visitor.SeesAsync("Stage 3 of");

        Assert.InRange((await visitor.Page.ContentAsync()).Length, 1, MostBytes);
        Assert.InRange(await SlowestKeyAsync(visitor), 0, SlowestKey);
    }

    private static async Task<double> SlowestKeyAsync(Visitor visitor)
    {
        await visitor.Page.EvaluateAsync(
            """
            () => {
              window.keyTimes = [];
              new PerformanceObserver(seen => seen.getEntries().forEach(e => window.keyTimes.push(e.duration)))
                .observe({ type: 'event', durationThreshold: 16 });
            }
            """
        );
        var field = visitor.Page.GetByLabel("Gauge pressure at the start of the hold");
        await field.ClickAsync();
        await field.PressSequentiallyAsync("60.40", new() { Delay = 30 });
        await visitor.Page.Mouse.WheelAsync(0, 600);
        return await visitor.Page.EvaluateAsync<double>(
            """
            () => new Promise(answer => requestAnimationFrame(() => setTimeout(
              () => answer(Math.max(0, ...window.keyTimes)), 100)))
            """
        );
    }
}
