using WeldTrace.Domain.Testing;
using WeldTrace.Engineering.Conformity;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Testing;

// The rate at which a sample is burst.
public sealed partial class PressureDepartureTests
{
    /// <summary>The plan allows 5 bar within a minute: the burst is kept, and somebody decides whether it counts.</summary>
    [Theory]
    [InlineData(true, "31.00", Verdict.Pass)]
    [InlineData(true, "61.0", Verdict.Undecided)]
    [InlineData(false, "31.00", Verdict.Fail)]
    public void Burst_RaisedTooFast_StandsUntilItIsDecided(
        bool goesOn,
        string bar,
        Verdict expected
    )
    {
        var test = ReachBurst();
        Accept.All(Stage(test, 4, Burst(bar, "5.1")));
        Assert.Equal(DepartureKind.RateTooHigh, test.OpenDeparture!.Kind);
        Assert.Null(test.Verdict);

        Accept.All(Decide(test, goesOn, SamplePeople.Engineer));

        Assert.Equal(expected, test.Verdict);
    }
}
