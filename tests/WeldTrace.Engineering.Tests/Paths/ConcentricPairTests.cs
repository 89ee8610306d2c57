using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Tests.Paths;

public sealed class ConcentricPairTests
{
    private static readonly CircularPass Outer = Passes.Usual with
    {
        Number = 2,
        TrackRadius = Length.FromMillimetres(90),
    };

    [Theory]
    [InlineData(RotationSense.Clockwise, RotationSense.CounterClockwise, FacingSides.BothAdvancing)]
    [InlineData(
        RotationSense.CounterClockwise,
        RotationSense.Clockwise,
        FacingSides.BothRetreating
    )]
    [InlineData(RotationSense.Clockwise, RotationSense.Clockwise, FacingSides.Unlike)]
    public void Compare_TravelSenses_SaysWhichSidesFace(
        RotationSense innerTravel,
        RotationSense outerTravel,
        FacingSides facing
    )
    {
        var pair = ConcentricPair
            .Compare(
                Passes.Usual with
                {
                    TravelSense = innerTravel,
                },
                Outer with
                {
                    TravelSense = outerTravel,
                }
            )
            .Value;
        Assert.Equal(facing, pair.Facing);
        Assert.EndsWith(
            "Sections of test pieces decide.",
            pair.Statement,
            StringComparison.Ordinal
        );
        Assert.Contains("9 mm wide", pair.Statement, StringComparison.Ordinal);
    }

    [Fact]
    public void Compare_PinTracksOverlap_SaysSo()
    {
        var pair = ConcentricPair
            .Compare(Passes.Usual, Outer with { TrackRadius = Length.FromMillimetres(80) })
            .Value;
        Assert.Equal(-1, pair.PinTrackGap.Millimetres, 1e-9);
        Assert.Contains("pin tracks overlap", pair.Statement, StringComparison.Ordinal);
    }

    [Fact]
    public void Compare_RadiiInTheWrongOrder_Refuses() =>
        Assert.Equal(
            "track radius",
            Assert.Single(ConcentricPair.Compare(Outer, Passes.Usual).Refusals).Where
        );

    [Fact]
    public void Compare_BothPassesImpossible_RefusesForBoth()
    {
        var wrong = Passes.Usual with { TrackRadius = Length.Zero };
        Assert.Equal(2, ConcentricPair.Compare(wrong, wrong).Refusals.Count);
    }
}
