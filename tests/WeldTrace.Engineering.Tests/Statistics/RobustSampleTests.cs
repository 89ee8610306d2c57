using CsCheck;
using WeldTrace.Engineering.Statistics;

namespace WeldTrace.Engineering.Tests.Statistics;

/// <summary>
/// Limits and hostile samples; the published cases, NIST data with the rule of Iglewicz and Hoaglin, are rows of h_process_log.csv.
/// </summary>
public sealed class RobustSampleTests
{
    [Fact]
    public void Of_NoValues_Refuses() =>
        Assert.Equal(RefusalReason.TooFewData, Assert.Single(RobustSample.Of([]).Refusals).Reason);

    [Fact]
    public void Of_MostlyEqualValues_PointsAtNone()
    {
        var sample = RobustSample.Of([1, 1, 1, 1, 50]).Value;
        Assert.Null(sample.FarthestModifiedZ);
        Assert.Equal(0, sample.Pointed());
    }

    [Fact]
    public void Median_AnyWildValue_StaysAmongTheOthers() =>
        Gen.Select(Gen.Double[0, 1].Array[5, 30], Gen.Double[-1e9, 1e9])
            .Sample(
                (values, wild) =>
                    Assert.InRange(RobustSample.Of([.. values, wild]).Value.Median, 0, 1)
            );
}
