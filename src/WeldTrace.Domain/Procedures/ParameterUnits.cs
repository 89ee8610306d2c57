namespace WeldTrace.Domain.Procedures;

/// <summary>The units in which each parameter may be stated, with their exact factors to SI (NIST SP 811).</summary>
public static class ParameterUnits
{
    private static readonly Dictionary<
        WeldParameter,
        IReadOnlyDictionary<string, UnitScale>
    > Known = new()
    {
        [WeldParameter.SpindleSpeed] = Scales(("rev/min", 1.0 / 60)),
        [WeldParameter.TravelSpeed] = Scales(
            ("mm/min", 1e-3 / 60),
            ("mm/s", 1e-3),
            ("in/min", 0.0254 / 60)
        ),
        [WeldParameter.AxialForce] = Scales(("kN", 1e3), ("N", 1), ("lbf", 4.4482216152605)),
        [WeldParameter.Torque] = Scales(("N·m", 1), ("ft·lbf", 1.3558179483314004)),
        [WeldParameter.PlungeDepth] = Scales(("mm", 1e-3), ("in", 0.0254)),
        [WeldParameter.PlungeRate] = Scales(("mm/min", 1e-3 / 60), ("in/min", 0.0254 / 60)),
        [WeldParameter.DwellTime] = Scales(("s", 1)),
        [WeldParameter.TiltAngle] = Scales(("°", Math.PI / 180)),
        [WeldParameter.HeelPlungeDepth] = Scales(("mm", 1e-3), ("in", 0.0254)),
        [WeldParameter.PenetrationLigament] = Scales(("mm", 1e-3), ("in", 0.0254)),
        [WeldParameter.EndDwellTime] = Scales(("s", 1)),
        [WeldParameter.RampTime] = Scales(("s", 1)),
        [WeldParameter.SideTiltAngle] = Scales(("°", Math.PI / 180)),
        [WeldParameter.LateralOffset] = Scales(("mm", 1e-3), ("in", 0.0254)),
        [WeldParameter.ToolTemperature] = new Dictionary<string, UnitScale>
        {
            ["°C"] = new(1, 273.15),
            ["°F"] = new(5.0 / 9, 273.15 - (32 * 5.0 / 9)),
        },
    };

    /// <summary>The units a person may choose for a parameter, metric first.</summary>
    public static IReadOnlyList<string> For(WeldParameter parameter) => [.. Known[parameter].Keys];

    /// <summary>Whether a parameter may be stated in a unit.</summary>
    public static bool Allows(WeldParameter parameter, string? unit) =>
        unit is not null && Known[parameter].ContainsKey(unit);

    /// <summary>A value in the coherent SI unit (1/s for rotation, m/s, N, N.m, m, s, rad, K).</summary>
    /// <param name="parameter">Parameter.</param>
    /// <param name="value">Value in <paramref name="unit"/>.</param>
    /// <param name="unit">One of <see cref="For"/>.</param>
    /// <exception cref="ArgumentException">The unit is not one of the parameter's.</exception>
    public static double ToSi(WeldParameter parameter, decimal value, string unit)
    {
        var scale = Scale(parameter, unit);
        return ((double)value * scale.Factor) + scale.Offset;
    }

    /// <summary>A value in a chosen unit from its coherent SI value.</summary>
    /// <exception cref="ArgumentException">The unit is not one of the parameter's.</exception>
    public static double FromSi(WeldParameter parameter, double siValue, string unit)
    {
        var scale = Scale(parameter, unit);
        return (siValue - scale.Offset) / scale.Factor;
    }

    private static UnitScale Scale(WeldParameter parameter, string unit) =>
        Known[parameter].TryGetValue(unit, out var scale)
            ? scale
            : throw new ArgumentException($"{parameter} has no unit '{unit}'.", nameof(unit));

    private static Dictionary<string, UnitScale> Scales(
        params (string Unit, double Factor)[] scales
    ) => scales.ToDictionary(s => s.Unit, s => new UnitScale(s.Factor, 0));

    private readonly record struct UnitScale(double Factor, double Offset);
}
