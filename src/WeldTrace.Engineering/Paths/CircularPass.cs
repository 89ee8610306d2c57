using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Paths;

/// <summary>One friction-stir pass on a full circle with closing overlap, as it is programmed.</summary>
public sealed record CircularPass
{
    /// <summary>Number of the pass in the order of welding, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>Radius of the tool-centre track, above zero; larger than the shoulder radius for a useful inner edge.</summary>
    public required Length TrackRadius { get; init; }

    /// <summary>Angle welded beyond the full turn, zero to below 360°.</summary>
    public required Angle OverlapAngle { get; init; }

    /// <summary>Sense of the spindle, seen from the shoulder side.</summary>
    public required RotationSense SpindleSense { get; init; }

    /// <summary>Sense of the travel on the circle, seen from the shoulder side.</summary>
    public required RotationSense TravelSense { get; init; }

    /// <summary>Travel speed of the tool centre, above zero.</summary>
    public required Speed TravelSpeed { get; init; }

    /// <summary>Spindle speed, above zero.</summary>
    public required RotationSpeed SpindleSpeed { get; init; }

    /// <summary>Depth from first contact to welding depth, zero or more.</summary>
    public required Length PlungeDepth { get; init; }

    /// <summary>Plunge rate, above zero.</summary>
    public required Speed PlungeRate { get; init; }

    /// <summary>Dwell between plunge and travel, zero or more.</summary>
    public TimeSpan DwellAtStart { get; init; }

    /// <summary>Dwell between travel and retraction, zero or more.</summary>
    public TimeSpan DwellAtEnd { get; init; }

    /// <summary>Time of the linear ramp from rest to travel speed, zero or more.</summary>
    public TimeSpan RampUp { get; init; }

    /// <summary>Time of the linear ramp from travel speed to rest, zero or more.</summary>
    public TimeSpan RampDown { get; init; }

    /// <summary>Distance of the retraction, zero or more.</summary>
    public required Length RetractDistance { get; init; }

    /// <summary>Retraction rate, above zero.</summary>
    public required Speed RetractRate { get; init; }

    /// <summary>Shoulder diameter, above zero.</summary>
    public required Length ShoulderDiameter { get; init; }

    /// <summary>Pin (probe) diameter, above zero and below the shoulder diameter.</summary>
    public required Length PinDiameter { get; init; }

    /// <summary>The overlap angle that belongs to an overlap length on a track radius above zero: θ = s/R.</summary>
    public static Angle OverlapAngleOf(Length overlap, Length trackRadius) =>
        Angle.FromRadians(overlap / trackRadius);

    /// <summary>Everything that keeps this pass from being laid out; empty when nothing does.</summary>
    public IReadOnlyList<Refusal> Check()
    {
        var check = new InputCheck()
            .Positive("track radius", TrackRadius.Millimetres, "mm")
            .Between("overlap angle", OverlapAngle.Degrees, 0, 359.999, "°")
            .Positive("travel speed", TravelSpeed.MillimetresPerMinute, "mm/min")
            .Positive("spindle speed", SpindleSpeed.RevolutionsPerMinute, "rev/min")
            .NotNegative("plunge depth", PlungeDepth.Millimetres, "mm")
            .Positive("plunge rate", PlungeRate.MillimetresPerMinute, "mm/min")
            .NotNegative("retract distance", RetractDistance.Millimetres, "mm")
            .Positive("retract rate", RetractRate.MillimetresPerMinute, "mm/min")
            .Positive("shoulder diameter", ShoulderDiameter.Millimetres, "mm")
            .Positive("pin diameter", PinDiameter.Millimetres, "mm");
        return CheckTimes(check)
            .Require(
                PinDiameter < ShoulderDiameter,
                RefusalReason.OutOfRange,
                "pin diameter",
                "It is not smaller than the shoulder diameter.",
                "Check both diameters against the tool drawing."
            )
            .Refusals;
    }

    private InputCheck CheckTimes(InputCheck check)
    {
        var path = TrackRadius.Metres * ((2 * Math.PI) + OverlapAngle.Radians);
        var ramped = TravelSpeed.MetresPerSecond * (RampUp + RampDown).TotalSeconds / 2;
        return check
            .NotNegative("dwell at start", DwellAtStart.TotalSeconds, "s")
            .NotNegative("dwell at end", DwellAtEnd.TotalSeconds, "s")
            .NotNegative("ramp up time", RampUp.TotalSeconds, "s")
            .NotNegative("ramp down time", RampDown.TotalSeconds, "s")
            .Require(
                ramped <= path,
                RefusalReason.OutOfRange,
                "ramp times",
                "The ramps are longer than the whole path.",
                "Shorten the ramps."
            )
            .Require(
                IsReached(path, TravelSpeed)
                    && IsReached(PlungeDepth.Metres, PlungeRate)
                    && IsReached(RetractDistance.Metres, RetractRate),
                RefusalReason.OutOfRange,
                "speeds",
                "With these speeds a movement would last longer than a day.",
                "Check the units of travel speed, plunge rate and retract rate."
            );
    }

    private static bool IsReached(double metres, Speed speed) =>
        speed.MetresPerSecond <= 0 || metres <= speed.MetresPerSecond * 86400;
}
