using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Signals;

namespace WeldTrace.Engineering.Tests.Signals;

public sealed class SeamPositionTests
{
    private static readonly Length Radius = Length.FromMillimetres(60);

    /// <summary>s = R theta, by definition of the radian; 400 degrees pass the turn once.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void Add_AxisAngleWrapsAtATurn_CountsOn(int sense)
    {
        var seam = SeamPosition.FromAxisAngle(Radius);
        for (var degrees = 0; degrees <= 400; degrees += 5)
        {
            seam.Add(degrees, Angle.FromDegrees(sense * degrees % 360).Radians);
        }

        Assert.Equal(60 * 400 * Math.PI / 180, seam.Travelled.Millimetres, 1e-9);
    }

    [Fact]
    public void Add_ProgrammedSpeed_IsSpeedTimesTime()
    {
        var seam = SeamPosition.FromProgrammedSpeed(Speed.FromMillimetresPerSecond(3));
        seam.Add(10, 0);
        Assert.Equal(0.006, seam.Add(12, 0), 1e-12);
    }

    [Fact]
    public void Interrupt_BetweenTwoStays_LeavesOutTheMoveBetween()
    {
        var seam = SeamPosition.FromTravelSpeed();
        seam.Add(0, 1);
        seam.Add(1, 1);
        seam.Interrupt();
        seam.Add(10, 1);
        Assert.Equal(2, seam.Add(11, 1), 1e-12);
    }

    [Theory]
    [InlineData(RotationSense.CounterClockwise, 90)]
    [InlineData(RotationSense.Clockwise, 270)]
    public void AngleAt_QuarterTurn_FollowsTheTravel(RotationSense travel, double degrees)
    {
        var track = new CircularTrack(Radius, Angle.Zero, travel);
        Assert.Equal(degrees, track.AngleAt(track.Circumference / 4).Degrees, 1e-9);
    }

    [Fact]
    public void AngleAt_BeyondATurn_IsReduced()
    {
        var track = new CircularTrack(
            Radius,
            Angle.FromDegrees(350),
            RotationSense.CounterClockwise
        );
        Assert.Equal(5, track.AngleAt(track.Circumference * (375.0 / 360)).Degrees, 1e-9);
    }

    [Fact]
    public void AxisTravelSpeed_SteadyTurn_IsRadiusTimesRate()
    {
        var axis = new AxisTravelSpeed(Radius);
        var speed = 0.0;
        for (var i = 0; i < 2000; i++)
        {
            speed = axis.Add(i * 0.005, (i * 0.005 * 0.05) % (2 * Math.PI));
        }

        Assert.Equal(0.06 * 0.05, speed, 1e-12);
    }

    [Fact]
    public void Constructors_RadiusOfZero_Throw()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => SeamPosition.FromAxisAngle(Length.Zero));
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            new CircularTrack(Length.Zero, Angle.Zero, RotationSense.Clockwise)
        );
    }
}
