using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Welding;
using WeldTrace.Web.LogJudging;

namespace WeldTrace.Web.Tests.LogJudging;

public sealed class RunSignalsTests
{
    // Flow rates of the NIST/SEMATECH e-Handbook 6.3.2.2: mean 50.81, mean moving range 1.8778, limits 45.82 and 55.81.
    private static readonly double[] Flow =
    [
        49.6,
        47.6,
        49.9,
        51.3,
        47.8,
        51.2,
        52.6,
        52.4,
        53.6,
        52.1,
    ];

    private static readonly ParameterWindow Window = new(
        WeldParameter.AxialForce,
        50,
        40,
        60,
        "kN",
        false
    );

    [Fact]
    public void Charts_OfTheHandbook_GiveItsLimits()
    {
        var signals = new RunSignals(Flow, Window);

        Assert.Equal(50.81, signals.Individuals!.Values.Centre, 2);
        Assert.Equal(45.82, signals.Individuals.Values.Lower, 1);
        Assert.Equal(55.81, signals.Individuals.Values.Upper, 1);
        Assert.All(Enumerable.Range(0, Flow.Length), i => Assert.Empty(signals.Of(i)));
        Assert.InRange(
            signals.Capability!.Cpk,
            signals.CpkInterval!.Value.Lower,
            signals.CpkInterval.Value.Upper
        );
    }

    [Fact]
    public void Signal_OfARunFarOff_SaysWhatItIs()
    {
        var signals = new RunSignals([.. Flow, .. Flow, 70], Window);

        Assert.Contains(RunSignal.ValueBeyondLimits, signals.Of(20));
        Assert.Contains(RunSignal.JumpFromRunBefore, signals.Of(20));
    }

    [Fact]
    public void Charts_WhenNothingVaries_GiveNoCapability() =>
        Assert.Null(new RunSignals([5, 5, 5], Window).Capability);
}
