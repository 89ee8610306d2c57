using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Paths;

/// <summary>
/// Path, times and sides of a circular pass. <c>L = R·(2π + θ)</c>, <c>t = L/v + t_up/2 + t_down/2</c>, rotary axis <c>Ω = v/R</c>,
/// feed at the shoulder edges <c>v·(1 ± Rs/R)</c>. Plane geometry; no source needed.
/// </summary>
public sealed record CircularPassLayout : IWorked
{
    private CircularPassLayout(CircularPass pass)
    {
        Pass = pass;
        var (radius, speed) = (pass.TrackRadius.Metres, pass.TravelSpeed.MetresPerSecond);
        OverlapLength = pass.TrackRadius * pass.OverlapAngle.Radians;
        PathLength = (pass.TrackRadius * (2 * Math.PI)) + OverlapLength;
        PlungeTime = Seconds(pass.PlungeDepth.Metres / pass.PlungeRate.MetresPerSecond);
        TraverseTime = Seconds(PathLength.Metres / speed) + ((pass.RampUp + pass.RampDown) / 2);
        RetractTime = Seconds(pass.RetractDistance.Metres / pass.RetractRate.MetresPerSecond);
        RunTime = PlungeTime + pass.DwellAtStart + TraverseTime + pass.DwellAtEnd + RetractTime;
        RotaryAxisSpeed = RotationSpeed.FromRadiansPerSecond(speed / radius);
        var edge = pass.ShoulderDiameter.Metres / 2 / radius;
        FeedAtInnerEdge = pass.TravelSpeed * (1 - edge);
        FeedAtOuterEdge = pass.TravelSpeed * (1 + edge);
        AdvancingEdge = AdvancingSide.OnCircle(pass.SpindleSense, pass.TravelSense);
        RetreatingEdge = AdvancingSide.Opposite(AdvancingEdge);
        Working = CircularPassWorking.Show(this);
    }

    /// <summary>The pass that was laid out.</summary>
    public CircularPass Pass { get; }

    /// <summary>Length of the tool-centre path with overlap; the metres charged to the tool for a finished run.</summary>
    public Length PathLength { get; }

    /// <summary>Length of the overlap.</summary>
    public Length OverlapLength { get; }

    /// <summary>Time from first contact to welding depth.</summary>
    public TimeSpan PlungeTime { get; }

    /// <summary>Time of the travel with both ramps.</summary>
    public TimeSpan TraverseTime { get; }

    /// <summary>Turns of the spindle during the travel.</summary>
    public double SpindleRevolutions =>
        Pass.SpindleSpeed.RevolutionsPerSecond * TraverseTime.TotalSeconds;

    /// <summary>Time of the retraction.</summary>
    public TimeSpan RetractTime { get; }

    /// <summary>Time of the whole run: plunge, dwell, travel, dwell, retraction.</summary>
    public TimeSpan RunTime { get; }

    /// <summary>Speed of the rotary axis that carries the work.</summary>
    public RotationSpeed RotaryAxisSpeed { get; }

    /// <summary>Feed along the path of the inner shoulder edge; negative when the shoulder covers the centre.</summary>
    public Speed FeedAtInnerEdge { get; }

    /// <summary>Feed along the path of the outer shoulder edge.</summary>
    public Speed FeedAtOuterEdge { get; }

    /// <summary>The edge of the track on which the tool surface moves with the travel.</summary>
    public CircleEdge AdvancingEdge { get; }

    /// <summary>The edge of the track on which the tool surface moves against the travel.</summary>
    public CircleEdge RetreatingEdge { get; }

    /// <summary>Where the exit hole stays, as angle from the start in the direction of travel.</summary>
    public Angle ExitHoleAngle => Pass.OverlapAngle;

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Lays out a pass; refused with every reason that <see cref="CircularPass.Check"/> finds.</summary>
    public static Computed<CircularPassLayout> Compute(CircularPass pass)
    {
        ArgumentNullException.ThrowIfNull(pass);
        return InputCheck.From(pass.Check()).Compute(() => new CircularPassLayout(pass));
    }

    /// <summary>The side of the weld that lies at an edge of the track.</summary>
    public WeldSide SideAt(CircleEdge edge) =>
        edge == AdvancingEdge ? WeldSide.Advancing : WeldSide.Retreating;

    /// <summary>The place reached after a distance along the path; distances outside the path are moved to its ends.</summary>
    public PathPosition PositionAt(Length distance)
    {
        var along = Math.Clamp(distance.Metres, 0, PathLength.Metres);
        var turn = 2 * Math.PI * Pass.TrackRadius.Metres;
        return new(
            Length.FromMetres(along),
            Angle.FromRadians(along / Pass.TrackRadius.Metres),
            PathLength - Length.FromMetres(along),
            along > turn ? Length.FromMetres(along - turn) : null
        );
    }

    /// <summary>The place reached a time after the travel began, with linear ramps.</summary>
    public PathPosition PositionAfter(TimeSpan sinceTravelBegan)
    {
        var (time, speed) = (sinceTravelBegan.TotalSeconds, Pass.TravelSpeed.MetresPerSecond);
        var (up, down) = (Pass.RampUp.TotalSeconds, Pass.RampDown.TotalSeconds);
        var left = TraverseTime.TotalSeconds - time;
        var distance =
            time <= 0 ? 0
            : left <= 0 ? PathLength.Metres
            : left < down ? PathLength.Metres - (speed * left * left / (2 * down))
            : time < up ? speed * time * time / (2 * up)
            : speed * (time - (up / 2));
        return PositionAt(Length.FromMetres(distance));
    }

    private static TimeSpan Seconds(double value) =>
        TimeSpan.FromTicks((long)Math.Round(value * TimeSpan.TicksPerSecond));
}
