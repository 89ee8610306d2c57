namespace WeldTrace.Engineering.Paths;

/// <summary>Sense of a rotation or of travel on a circle, looking from the shoulder side on the work.</summary>
public enum RotationSense
{
    /// <summary>With the hands of a clock.</summary>
    Clockwise,

    /// <summary>Against the hands of a clock.</summary>
    CounterClockwise,
}

/// <summary>The two sides of a friction-stir weld (ISO 25239-1:2020 terms).</summary>
public enum WeldSide
{
    /// <summary>The side where the surface speed of the tool points in the direction of travel.</summary>
    Advancing,

    /// <summary>The side where the surface speed of the tool points against the direction of travel.</summary>
    Retreating,
}
