using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.ToolLife;

namespace WeldTrace.Engineering.Tests.ToolLife;

/// <summary>Line through (0, 10), (100, 30), (200, 50) µm by hand: 0.2 µm/m, limit 100 µm at 450 m. Least squares; that wear is judged by a line is common practice, no source.</summary>
public sealed class WearTrendTests
{
    [Fact]
    public void Fit_ExactLine_GivesSlopeAndLengthAtTheLimit()
    {
        var trend = Fit((0, 10), (100, 30), (200, 50)).Value;
        Assert.Equal(0.2, trend.MicrometresPerMetre, 1e-9);
        Assert.Equal(0, trend.StandardErrorMicrometresPerMetre, 1e-9);
        Assert.Equal(450, trend.ReachesLimitAt!.Value.Metres, 1e-6);
    }

    [Fact]
    public void Fit_WearDoesNotGrow_HasNoLengthAtTheLimit()
    {
        var trend = Fit((0, 10), (100, 10), (200, 9)).Value;
        Assert.Null(trend.ReachesLimitAt);
        Assert.False(trend.Working.Validity.IsWithin);
    }

    [Fact]
    public void Fit_AllAtOneLength_Refuses() =>
        Assert.Equal(
            "inspections",
            Assert.Single(Fit((100, 1), (100, 2), (100, 3)).Refusals).Where
        );

    private static Computed<WearTrend> Fit(params (double Metres, double Micrometres)[] readings) =>
        WearTrend.Fit(
            [
                .. readings.Select(r => new WearReading(
                    Length.FromMetres(r.Metres),
                    Length.FromMicrometres(r.Micrometres)
                )),
            ],
            Length.FromMicrometres(100)
        );
}
