using CsCheck;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Signals;

namespace WeldTrace.Engineering.Tests.Signals;

public sealed class SpindleLineTests
{
    private static readonly RotationSpeed Spindle = RotationSpeed.FromRevolutionsPerMinute(600);

    [Fact]
    public void Compute_TooFewSamplesPerTurn_Refuses() =>
        Assert.Equal(
            RefusalReason.OutsideValidity,
            Assert.Single(SpindleLine.Compute(new double[100], 15, Spindle).Refusals).Reason
        );

    [Fact]
    public void Compute_ThreeSamplesPerTurn_IsAHintOnly() =>
        Assert.False(
            SpindleLine.Compute(Wave(1, 300, 30), 30, Spindle).Value.Working.Validity.IsWithin
        );

    [Fact]
    public void Compute_NoLine_HasNoRatio() =>
        Assert.Null(SpindleLine.Compute(new double[200], 100, Spindle).Value.LowBandRatio);

    [Fact]
    public void Amplitude_WholeTurns_IsThatOfTheWave() =>
        Gen.Select(Gen.Double[0.01, 100], Gen.Int[1, 20])
            .Sample(
                (amplitude, turns) =>
                    Assert.Equal(
                        1,
                        SpindleLine.AmplitudeAt(Wave(amplitude, 10 * turns, 100), 100, 10)
                            / amplitude,
                        1e-9
                    )
            );

    [Fact]
    public void Triangles_FewSamples_AreAllKept()
    {
        var indices = new int[5];
        Assert.Equal(3, LargestTriangle.Select([0, 1, 2], [1, 5, 2], indices));
        Assert.Equal([0, 1, 2], indices[..3]);
        Assert.Throws<ArgumentException>(() => LargestTriangle.Select([0], [1], new int[2]));
    }

    private static double[] Wave(double amplitude, int count, double sampleHertz) =>
        [
            .. Enumerable
                .Range(0, count)
                .Select(i => 3 + (amplitude * Math.Sin(2 * Math.PI * 10 * i / sampleHertz))),
        ];
}
