using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Process;

/// <summary>
/// Pitch and speeds of the tool: <c>p = v/n</c>, <c>u = π·d·n</c>, at the shoulder edge relative to the work <c>u + v</c> on the
/// advancing and <c>u − v</c> on the retreating side. Definitions; no source needed.
/// </summary>
public sealed record WeldKinematics : IWorked
{
    private WeldKinematics(RotationSpeed spindle, Speed travel, Length? shoulder, Length? pin)
    {
        Pitch = WeldPitch.FromMetresPerRevolution(
            travel.MetresPerSecond / spindle.RevolutionsPerSecond
        );
        ShoulderSpeed = shoulder is { } edge ? PeripheralSpeed(edge, spindle) : null;
        PinSpeed = pin is { } diameter ? PeripheralSpeed(diameter, spindle) : null;
        AdvancingEdgeSpeed = ShoulderSpeed + travel;
        RetreatingEdgeSpeed = ShoulderSpeed - travel;
        Working = Working
            .Of("Weld pitch and tool speeds", "p = v/n; u = π·d·n; u_AS = u + v; u_RS = u − v")
            .Input("n", "spindle speed", spindle.RevolutionsPerMinute, "rev/min")
            .Input("v", "travel speed", travel.MillimetresPerMinute, "mm/min")
            .OptionalInput("d", "shoulder diameter", shoulder?.Millimetres, "mm")
            .OptionalInput("d_p", "pin diameter", pin?.Millimetres, "mm")
            .Result("p", "weld pitch", Pitch.MillimetresPerRevolution, "mm/rev")
            .Result("1/p", "revolutions per millimetre", RevolutionsPerMillimetre, "1/mm")
            .OptionalResult(
                "u",
                "peripheral speed of the shoulder",
                ShoulderSpeed?.MetresPerSecond,
                "m/s"
            )
            .OptionalResult(
                "u_AS",
                "edge speed, advancing side",
                AdvancingEdgeSpeed?.MetresPerSecond,
                "m/s"
            )
            .OptionalResult(
                "u_RS",
                "edge speed, retreating side",
                RetreatingEdgeSpeed?.MetresPerSecond,
                "m/s"
            )
            .Build();
    }

    /// <summary>Travel per revolution of the spindle.</summary>
    public WeldPitch Pitch { get; }

    /// <summary>Revolutions of the spindle per millimetre of travel.</summary>
    public double RevolutionsPerMillimetre => 1 / Pitch.MillimetresPerRevolution;

    /// <summary>Peripheral speed of the shoulder; null without a diameter.</summary>
    public Speed? ShoulderSpeed { get; }

    /// <summary>Peripheral speed of the pin; null without a diameter.</summary>
    public Speed? PinSpeed { get; }

    /// <summary>Speed of the shoulder edge over the work on the advancing side; null without a diameter.</summary>
    public Speed? AdvancingEdgeSpeed { get; }

    /// <summary>Speed of the shoulder edge over the work on the retreating side; null without a diameter.</summary>
    public Speed? RetreatingEdgeSpeed { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Peripheral speed π·d·n of a diameter.</summary>
    public static Speed PeripheralSpeed(Length diameter, RotationSpeed spindle) =>
        Speed.FromMetresPerSecond(Math.PI * diameter.Metres * spindle.RevolutionsPerSecond);

    /// <summary>Computes pitch and speeds.</summary>
    /// <param name="spindle">Spindle speed, above zero.</param>
    /// <param name="travel">Travel speed, above zero.</param>
    /// <param name="shoulderDiameter">Shoulder diameter, above zero, or null.</param>
    /// <param name="pinDiameter">Pin diameter, above zero, or null.</param>
    public static Computed<WeldKinematics> Compute(
        RotationSpeed spindle,
        Speed travel,
        Length? shoulderDiameter,
        Length? pinDiameter = null
    )
    {
        var check = new InputCheck()
            .Positive("spindle speed", spindle.RevolutionsPerMinute, "rev/min")
            .Positive("travel speed", travel.MillimetresPerMinute, "mm/min")
            .Positive("shoulder diameter", shoulderDiameter?.Millimetres ?? 1, "mm")
            .Positive("pin diameter", pinDiameter?.Millimetres ?? 1, "mm");
        return check.Compute(() =>
            new WeldKinematics(spindle, travel, shoulderDiameter, pinDiameter)
        );
    }
}
