using WeldTrace.Engineering.Signals;

namespace WeldTrace.Engineering.Tests.Signals;

public sealed class ExcursionDetectorTests
{
    private const double Period = 0.1;

    /// <summary>First excursions of the constructed check log; computed by explicit loops and vectorised.</summary>
    [Theory]
    [InlineData("Fz_kN", 11, 13, ExcursionSide.High, 64.0, 65.2, 101.66667, 4.0)]
    [InlineData("torque_Nm", 20, 24, ExcursionSide.Low, 100.0, 103.0, 221.66667, 10.0)]
    public void Complete_CheckLog_GivesFirstExcursion(
        string channel,
        double lower,
        double upper,
        ExcursionSide side,
        double start,
        double end,
        double positionMillimetres,
        double lengthMillimetres
    )
    {
        var (log, seam) = (CheckLog.Instance, SeamPosition.FromTravelSpeed());
        var (seconds, values, speed) = (log.Seconds, log.Named(channel), log.SpeedMetresPerSecond);
        var detector = Detector(lower, upper);
        for (var i = 0; i < seconds.Length; i++)
        {
            var metres = seam.Add(seconds[i], speed[i]);
            if (seconds[i] is >= 35 and <= 130)
            {
                detector.Add(seconds[i], values[i], metres);
            }
        }

        var first = detector.Complete()[0];
        Assert.Equal(side, first.Side);
        Assert.Equal(start, first.StartSeconds, 1e-3);
        Assert.Equal(end, first.EndSeconds, 1e-3);
        Assert.Equal(positionMillimetres, first.StartMetres * 1e3, 1e-4);
        Assert.Equal(lengthMillimetres, (first.EndMetres - first.StartMetres) * 1e3, 1e-5);
    }

    [Theory]
    [InlineData("5", "0")]
    [InlineData("4", "")]
    [InlineData("4 1 4", "0")]
    [InlineData("3 2 3", "0")]
    [InlineData("3 3 3", "")]
    [InlineData("5 3 5", "0 8")]
    public void Complete_StretchesAndGaps_MergesThenDebounces(string lengths, string starts)
    {
        var detector = Detector(null, 10);
        var (sample, outside) = (0, true);
        foreach (var length in lengths.Split(' ').Select(int.Parse))
        {
            for (var i = 0; i < length; i++, sample++)
            {
                detector.Add(sample * Period, outside ? 11 : 9, sample);
            }

            outside = !outside;
        }

        detector.Add(sample * Period, 9, sample);
        var found = detector
            .Complete()
            .Select(excursion => Math.Round(excursion.StartSeconds / Period));
        Assert.Equal(starts, string.Join(' ', found));
    }

    [Fact]
    public void Add_ValueOnLimit_IsInside()
    {
        var detector = Detector(1, 2);
        foreach (var value in (double[])[1, 2, 1, 2, 1, 2, 1, 2])
        {
            detector.Add(detector.SampleCount * Period, value, 0);
        }

        Assert.Empty(detector.Complete());
        Assert.Equal(1, detector.FractionInside);
    }

    [Fact]
    public void Complete_BothSides_KeepsThemApartWithTheirExtremes()
    {
        var detector = Detector(1, 2);
        foreach (var value in (double[])[3, 4, 4, 3, 3, 0, -1, 0, 0, 0, 0])
        {
            detector.Add(detector.SampleCount * Period, value, detector.SampleCount);
        }

        Assert.Collection(
            detector.Complete(),
            high =>
            {
                Assert.Equal(ExcursionSide.High, high.Side);
                Assert.Equal((4, 0.1), (high.ExtremeInSampleUnit, high.ExtremeSeconds));
                Assert.Equal(5, high.EndMetres - high.StartMetres);
            },
            low =>
            {
                Assert.Equal(ExcursionSide.Low, low.Side);
                Assert.Equal(-1, low.ExtremeInSampleUnit);
                Assert.Equal(1.1, low.EndSeconds, 1e-9);
            }
        );
    }

    [Fact]
    public void Interrupt_BetweenStretches_DoesNotMerge()
    {
        var detector = Detector(null, 0);
        for (var i = 0; i < 4; i++)
        {
            detector.Add(i * Period, 1, i);
        }

        detector.Interrupt();
        for (var i = 4; i < 8; i++)
        {
            detector.Add(i * Period, 1, i);
        }

        Assert.Empty(detector.Complete());
        Assert.Equal(2, detector.RawStretches);
    }

    [Theory]
    [InlineData(2.0, 1.0)]
    [InlineData(double.NaN, 1.0)]
    public void Constructor_LimitsNotInOrder_Throws(double lower, double upper) =>
        Assert.Throws<ArgumentException>(() => Detector(lower, upper));

    private static ExcursionDetector Detector(double? lower, double? upper) =>
        new(lower, upper, new ExcursionRule(TimeSpan.FromSeconds(Period)));
}
