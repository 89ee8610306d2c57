using CsCheck;
using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.LeakTesting;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Tests.LeakTesting;

/// <summary>No published case: what an undecided decay test says of the hold that would decide it is checked by holding that long at the same leak.</summary>
public sealed class DecidingHoldTests
{
    [Fact]
    public void HoldThatDecides_Decides() =>
        Gen.Select(Gen.Double[0, 3e-5], Gen.Double[5, 60])
            .Sample(
                (rate, pascals) =>
                {
                    var test = At(rate, pascals, 3600);
                    if (test.HoldThatDecides is { } hold)
                    {
                        Assert.Equal(Verdict.Undecided, test.Judgement!.Verdict);
                        Assert.True(hold >= test.Duration);
                        var longer = At(rate, pascals, hold.TotalSeconds * 1.001);
                        Assert.NotEqual(Verdict.Undecided, longer.Judgement!.Verdict);
                    }
                }
            );

    [Fact]
    public void DecidedTest_NeedsNoLongerHold() => Assert.Null(At(1e-4, 5, 36_000).HoldThatDecides);

    /// <summary>The sooner the pressure falls, the worse the verdict; the vaguer the gauge, never a pass.</summary>
    [Fact]
    public void Verdict_IsMonotone() =>
        Gen.Select(Gen.Double[0, 4e-5], Gen.Double[0, 4e-5], Gen.Double[1, 60], Gen.Double[0, 60])
            .Sample(
                (rate, more, pascals, wider) =>
                {
                    var verdict = At(rate, pascals, 3600).Judgement!.Verdict;
                    Assert.False(
                        verdict != Verdict.Pass
                            && At(rate + more, pascals, 3600).Judgement!.Verdict == Verdict.Pass
                    );
                    Assert.False(
                        verdict != Verdict.Pass
                            && At(rate, pascals + wider, 3600).Judgement!.Verdict == Verdict.Pass
                    );
                }
            );

    private static PressureDecay At(double rate, double pascals, double seconds)
    {
        var volume = Volume.FromLitres(4);
        var (start, kelvin) = (3e5, Temperature.FromDegreesCelsius(20));
        return PressureDecay
            .Evaluate(
                new DecayTest
                {
                    Volume = volume,
                    Readings =
                    [
                        new(TimeSpan.Zero, Pressure.FromPascals(start), kelvin),
                        new(
                            TimeSpan.FromSeconds(seconds),
                            Pressure.FromPascals(start - (rate * seconds / volume.CubicMetres)),
                            kelvin
                        ),
                    ],
                    Uncertainty = new(Volume.Zero, Pressure.FromPascals(pascals), 0, TimeSpan.Zero),
                    Reference = kelvin,
                    Limit = WrittenLimit.Exact(1e-5, "Pa·m³/s"),
                }
            )
            .Value;
    }
}
