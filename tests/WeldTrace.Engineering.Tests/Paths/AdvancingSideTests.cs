using CsCheck;
using WeldTrace.Engineering.Paths;

namespace WeldTrace.Engineering.Tests.Paths;

/// <summary>The definition itself: at the advancing edge the surface velocity of the tool has a part along the travel.</summary>
public sealed class AdvancingSideTests
{
    private static readonly RotationSense[] Senses = Enum.GetValues<RotationSense>();

    public static TheoryData<RotationSense, RotationSense, int> EightPoints
    {
        get
        {
            var data = new TheoryData<RotationSense, RotationSense, int>();
            foreach (var spindle in Senses)
            {
                foreach (var travel in Senses)
                {
                    for (var eighth = 0; eighth < 8; eighth++)
                    {
                        data.Add(spindle, travel, eighth);
                    }
                }
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(EightPoints))]
    public void OnCircle_AtEightPoints_AgreesWithFiniteRotation(
        RotationSense spindle,
        RotationSense travel,
        int eighth
    )
    {
        const double track = 75;
        const double shoulder = 9;
        const double small = 1e-6;
        var angle = eighth * Math.PI / 4;
        var edge = AdvancingSide.OnCircle(spindle, travel) == CircleEdge.Outer ? 1 : -1;

        var (startX, startY) = OnTrack(angle);
        var (endX, endY) = OnTrack(angle + (Sign(travel) * small));
        var (rimX, rimY) = Rim(angle, edge, 0);
        var (turnedX, turnedY) = Rim(angle, edge, Sign(spindle) * small);
        var alongTravel =
            ((turnedX - rimX) * (endX - startX)) + ((turnedY - rimY) * (endY - startY));

        Assert.True(alongTravel > 0);

        static (double X, double Y) OnTrack(double a) => (track * Math.Cos(a), track * Math.Sin(a));
        static (double X, double Y) Rim(double a, int edge, double turn) =>
            (edge * shoulder * Math.Cos(a + turn), edge * shoulder * Math.Sin(a + turn));
    }

    [Theory]
    [InlineData(RotationSense.Clockwise, LineSide.Left)]
    [InlineData(RotationSense.CounterClockwise, LineSide.Right)]
    public void OnLine_SpindleSense_GivesTheSideOfTheTruthTable(
        RotationSense spindle,
        LineSide side
    ) => Assert.Equal(side, AdvancingSide.OnLine(spindle));

    [Fact]
    public void OnCircle_MirroredSpindle_SwapsTheEdge() =>
        Gen.Select(Gen.Enum<RotationSense>(), Gen.Enum<RotationSense>())
            .Sample(
                (spindle, travel) =>
                {
                    var edge = AdvancingSide.OnCircle(spindle, travel);
                    var other = AdvancingSide.Opposite(spindle);
                    Assert.Equal(
                        AdvancingSide.Opposite(edge),
                        AdvancingSide.OnCircle(other, travel)
                    );
                    Assert.Equal(
                        edge,
                        AdvancingSide.OnCircle(other, AdvancingSide.Opposite(travel))
                    );
                    Assert.Equal(edge, AdvancingSide.OnCircle(travel, spindle));
                }
            );

    [Fact]
    public void OnCircle_SameSideAsOnLine_InsideIsLeftOfCounterClockwiseTravel()
    {
        foreach (var spindle in Senses)
        {
            var isLeft = AdvancingSide.OnLine(spindle) == LineSide.Left;
            Assert.Equal(
                isLeft ? CircleEdge.Inner : CircleEdge.Outer,
                AdvancingSide.OnCircle(spindle, RotationSense.CounterClockwise)
            );
        }
    }

    [Fact]
    public void OnCircle_UnknownSense_Throws() =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            AdvancingSide.OnCircle((RotationSense)7, RotationSense.Clockwise)
        );

    private static int Sign(RotationSense sense) =>
        sense == RotationSense.CounterClockwise ? 1 : -1;
}
