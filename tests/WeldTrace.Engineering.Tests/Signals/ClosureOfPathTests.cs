using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Signals;

namespace WeldTrace.Engineering.Tests.Signals;

/// <summary>A circle travelled at even speed beside its circumference 2πr (Euclidean geometry; no published case).</summary>
public sealed class ClosureOfPathTests
{
    [Fact]
    public void Compute_SpeedHalfAPercentHigh_IsHalfAPercentOfTheCircumference()
    {
        var round = Length.FromMetres(2 * Math.PI * 0.08);
        var path = new CoordinatePath();
        for (var i = 0; i <= 3600; i++)
        {
            var angle = 2 * Math.PI * i / 3600;
            path.Add(0.08 * Math.Cos(angle), 0.08 * Math.Sin(angle));
        }

        var closure = ClosureOfPath
            .Compute(round * 1.005, Length.FromMetres(path.TravelledMetres))
            .Value;

        Assert.Equal(0.005, closure.Share, 1e-4);
        Assert.Equal(0.005 * round.Millimetres, closure.Difference.Millimetres, 0.06);
    }

    [Fact]
    public void Compute_NothingByTheOtherChannel_Refuses() =>
        Assert.Equal(
            "path by the other channel",
            Assert.Single(ClosureOfPath.Compute(Length.FromMetres(1), Length.Zero).Refusals).Where
        );
}
