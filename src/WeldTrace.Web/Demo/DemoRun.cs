using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Web.Demo;

/// <summary>What an invented machine did: one circular pass with plunge, dwell, ramps, traverse and exit.</summary>
internal sealed record DemoRun
{
    public Length TrackRadius { get; init; } = Length.FromMillimetres(62);

    public Length Overlap { get; init; } = Length.FromMillimetres(15);

    public Angle Start { get; init; } = Angle.Zero;

    public RotationSense Travel { get; init; } = RotationSense.CounterClockwise;

    public Speed TravelSpeed { get; init; } = Speed.FromMillimetresPerMinute(200);

    public RotationSpeed SpindleSpeed { get; init; } = RotationSpeed.FromRevolutionsPerMinute(800);

    public Force AxialForce { get; init; } = Force.FromKilonewtons(8);

    public Torque Torque { get; init; } = Torque.FromNewtonMetres(18);

    public Length PlungeDepth { get; init; } = Length.FromMillimetres(3.2);

    public DemoExcursion? Excursion { get; init; }

    /// <summary>Angle travelled when the run was stopped; none: it went to the end.</summary>
    public Angle? AbortAt { get; init; }

    public int SamplesPerSecond { get; init; } = 100;

    public int Seed { get; init; } = 1;

    public Length PlannedPath => (TrackRadius * (2 * Math.PI)) + Overlap;

    /// <summary>Path of this run, shorter than planned when it was stopped.</summary>
    public Length Path => AbortAt is { } angle ? TrackRadius * angle.Radians : PlannedPath;
}
