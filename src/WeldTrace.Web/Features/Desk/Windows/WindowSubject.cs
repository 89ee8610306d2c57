using WeldTrace.Documents;
using WeldTrace.Documents.CalculationSheets;
using WeldTrace.Engineering.Materials;
using WeldTrace.Engineering.Process;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Web.Components.Figures;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Desk.Windows;

/// <summary>A parameter window: pitch and heat at its set point and its corners.</summary>
public sealed class WindowSubject : IDeskSubject
{
    public string Path => Routes.DeskWindow;

    public string Title => "Window and heat";

    public string Purpose =>
        "Weld pitch, line energy and the published band of the peak temperature at the set point and the corners of a parameter window.";

    public IReadOnlyList<DeskGroup> Groups { get; } =
    [
        new(
            "Joint and tool",
            DeskField.Choice(
                "alloy",
                "Alloy",
                "6061",
                [
                    .. AlloyLibrary
                        .All.Where(a => a.Liquidus is not null)
                        .Select(a => new FieldOption(a.Designation, a.Designation)),
                ]
            ),
            Millimetres("thickness", "Thickness under the tool", "5", "thickness"),
            Millimetres(
                "shoulder",
                "Shoulder diameter",
                "15",
                "shoulder diameter",
                "shoulder radius"
            ),
            Millimetres("pin", "Pin diameter", "6", "pin diameter", "pin radius"),
            Millimetres("pinlength", "Pin length", "4.7", "pin length"),
            Millimetres("heel", "Heel plunge depth", "0.1", "heel plunge depth")
        ),
        new(
            "Spindle speed",
            Turns("spindlelow", "Spindle speed, lower limit", "900"),
            Turns("spindle", "Spindle speed, set point", "1000") with
            {
                Called = ["spindle speed"],
            },
            Turns("spindlehigh", "Spindle speed, upper limit", "1100")
        ),
        new(
            "Travel speed",
            Feed("travellow", "Travel speed, lower limit", "180"),
            Feed("travel", "Travel speed, set point", "200") with
            {
                Called = ["travel speed"],
            },
            Feed("travelhigh", "Travel speed, upper limit", "220")
        ),
        new(
            "Heat (each may be left empty)",
            DeskField.Of<Torque>("torque", "Measured spindle torque", "22") with
            {
                Optional = true,
                Called = ["spindle torque"],
            },
            DeskField.Of<Pressure>(
                "hotyield",
                "Yield strength at the process temperature",
                "20",
                UnitScale.Stress
            ) with
            {
                Optional = true,
                Called = ["contact shear stress"],
                Hint =
                    "For the heat from the geometry of the tool; at room temperature it is several times too high.",
            }
        ),
    ];

    public Calculation? Calculate(DeskEntries entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        var window = EnteredWindow.Read(entries);
        if (!entries.AreClean)
        {
            return null;
        }

        var isComputed =
            entries.Take(
                WeldKinematics.Compute(window.Spindle, window.Travel, window.Shoulder, window.Pin),
                out var kinematics
            )
            & entries.Take(
                HeatIndex.Compute(
                    window.Spindle,
                    window.Travel,
                    window.Alloy.Liquidus!.Value,
                    window.Alloy.Solidus?.Value
                ),
                out var heat
            );
        IReadOnlyList<LabelledValue> figures = [.. WindowFigures.Further(entries, window)];
        return !isComputed || !entries.AreClean
            ? null
            : new Calculation
            {
                Title = Title,
                Figures =
                [
                    new("Weld pitch at the set point", entries.Show(kinematics!.Pitch, digits: 3)),
                    new("Peak temperature, from", entries.Show(heat!.Low, digits: 3)),
                    new("Peak temperature, to", entries.Show(heat.High, digits: 3)),
                    .. figures,
                ],
                Statements = [.. WindowFigures.Statements(heat, window)],
                Plot = WindowFigures.Plot(window, entries.Units),
                Tables = [WindowFigures.Corners(entries, window)],
                Cautions = [DeskCautions.TestWelds, DeskCautions.Spindle],
            };
    }

    private static DeskField Millimetres(
        string name,
        string label,
        string initial,
        params IReadOnlyList<string> called
    ) => DeskField.Of<Length>(name, label, initial) with { Called = called };

    private static DeskField Turns(string name, string label, string initial) =>
        DeskField.Of<RotationSpeed>(name, label, initial);

    private static DeskField Feed(string name, string label, string initial) =>
        DeskField.Of<Speed>(name, label, initial);
}
