using WeldTrace.Documents.Drawings;
using WeldTrace.Documents.Tests.Samples;
using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;
using Xunit;

namespace WeldTrace.Documents.Tests.Drawings;

public sealed class RadialScaleTests
{
    [Fact]
    public void For_WideBands_IsTrueToScale()
    {
        var plan = Plan(shoulder: 30, 40);
        var scale = RadialScale.For(plan, 110);

        Assert.False(scale.IsEnlarged);
        Assert.Equal(80, scale.Of(Length.FromMillimetres(40)), 9);
    }

    [Fact]
    public void For_NarrowBands_WidensThemAndSaysSo()
    {
        var plan = Plan(shoulder: 12, 150, 158);
        var scale = RadialScale.For(plan, 90);

        Assert.True(scale.IsEnlarged);
        Assert.Equal(90, scale.Outer(plan.Tracks[1]), 9);
        Assert.True(scale.Outer(plan.Tracks[0]) - scale.Inner(plan.Tracks[0]) > 20);
        Assert.True(scale.Inner(plan.Tracks[0]) > 0);
    }

    [Fact]
    public void For_ShoulderWiderThanTheTrack_StaysOnThePaper()
    {
        var plan = Plan(shoulder: 30, 5);
        var scale = RadialScale.For(plan, 90);

        Assert.Equal(0, scale.Inner(plan.Tracks[0]));
        Assert.Equal(90, scale.Outer(plan.Tracks[0]), 9);
    }

    [Fact]
    public void For_NoTrack_DoesNotFail() =>
        Assert.Equal(90, RadialScale.For(Plan(18), 90).Of(Length.FromMillimetres(1)), 9);

    private static PassPlan Plan(double shoulder, params double[] radii) =>
        new(
            "J1",
            [
                .. radii.Select(
                    (radius, i) =>
                        SampleJoints.Track(
                            $"{i + 1}",
                            radius,
                            RotationSense.Clockwise,
                            WeldSide.Retreating,
                            WeldSide.Advancing,
                            shoulder
                        )
                ),
            ]
        );
}
