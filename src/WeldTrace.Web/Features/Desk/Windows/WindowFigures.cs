using WeldTrace.Documents;
using WeldTrace.Documents.CalculationSheets;
using WeldTrace.Engineering.Process;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Web.Components.Figures;

namespace WeldTrace.Web.Features.Desk.Windows;

/// <summary>What follows from a window.</summary>
internal static class WindowFigures
{
    /// <summary>Energy, heat and ligament, as far as their values were entered.</summary>
    public static IEnumerable<LabelledValue> Further(DeskEntries entries, EnteredWindow window)
    {
        if (
            entries.Take(
                PenetrationLigament.Compute(window.Thickness, window.PinLength, null, window.Heel),
                out var ligament
            )
        )
        {
            yield return new("Penetration ligament", entries.Show(ligament.Ligament, digits: 3));
        }

        if (
            window.Torque is { } torque
            && entries.Take(
                PowerInput.Compute(window.Spindle, torque, window.Travel),
                out var power
            )
        )
        {
            yield return new(
                "Line energy into the weld",
                entries.Show(power.LineEnergy, digits: 3)
            );
        }

        if (
            window.YieldWhenHot is { } yieldWhenHot
            && entries.Take(
                AnalyticHeat.Compute(
                    new ToolGeometry(
                        window.Shoulder / 2,
                        window.Pin / 2,
                        window.PinLength,
                        Angle.Zero
                    ),
                    window.Spindle,
                    ContactShear.Sticking(yieldWhenHot)
                ),
                out var heat
            )
        )
        {
            yield return new("Heat from the tool's geometry", entries.Show(heat.Total, digits: 3));
            yield return new("Torque that belongs to it", entries.Show(heat.Torque, digits: 3));
        }
    }

    public static IEnumerable<string> Statements(HeatIndex heat, EnteredWindow window)
    {
        var hottest = At(window, window.SpindleHigh, window.TravelLow);
        yield return heat.ReachesSolidus
            ? "At the set point the band already reaches the solidus: incipient melting is possible."
        : hottest.ReachesSolidus
            ? "At the hottest corner the band reaches the solidus: narrow the window, or show by test welds that nothing melts there."
        : "The band stays below the solidus in the whole window.";
    }

    public static CalculationPlot Plot(EnteredWindow window, UnitSystem units) =>
        new(
            "Peak temperature against spindle speed",
            HeatPlot.Of(
                spindle => At(window, spindle, window.Travel),
                window.SpindleLow,
                window.Spindle,
                window.SpindleHigh,
                units
            ),
            "Lines: low and high end of the published band at the travel speed of the set point. Discs: set point. Dashed: solidus, at which the band is capped."
        );

    public static CalculationTable Corners(DeskEntries entries, EnteredWindow window) =>
        new(
            "Set point and corners",
            ["Place", "Spindle", "Travel", "Pitch", "Heat index", "Peak, from", "Peak, to"],
            [
                .. window.Places.Select(place =>
                {
                    var heat = At(window, place.Spindle, place.Travel);
                    var pitch = WeldPitch.FromMetresPerRevolution(
                        place.Travel.MetresPerSecond / place.Spindle.RevolutionsPerSecond
                    );
                    return (IReadOnlyList<string>)
                        [
                            place.Name,
                            entries.Show(place.Spindle),
                            entries.Show(place.Travel),
                            entries.Show(pitch, digits: 3),
                            SensibleDigits.Show(heat.Index, 3),
                            entries.Show(heat.Low, digits: 3),
                            entries.Show(heat.High, digits: 3),
                        ];
                }),
            ]
        );

    private static HeatIndex At(EnteredWindow window, RotationSpeed spindle, Speed travel) =>
        HeatIndex
            .Compute(spindle, travel, window.Alloy.Liquidus!.Value, window.Alloy.Solidus?.Value)
            .Value;
}
