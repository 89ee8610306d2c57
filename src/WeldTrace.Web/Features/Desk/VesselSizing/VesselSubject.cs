using WeldTrace.Documents.CalculationSheets;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Vessels;
using WeldTrace.Web.Components.Figures;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Desk.VesselSizing;

/// <summary>Pressure ladder, walls and masses of two shapes, and what a chosen wall holds.</summary>
public sealed class VesselSubject : IDeskSubject
{
    public string Path => Routes.DeskVessel;

    public string Title => "Vessel sizing and pressure ladder";

    public string Purpose =>
        "Proof and burst pressure from the operating pressure, the walls that a sphere and a cylinder need, and stress, margin and predicted burst of the wall that you choose.";

    public IReadOnlyList<DeskGroup> Groups { get; } =
    [
        new(
            "Task",
            DeskField.Of<Volume>("volume", "Volume", "10") with
            {
                Called = ["volume"],
            },
            DeskField.Of<Pressure>("meop", "Maximum expected operating pressure, gauge", "60") with
            {
                Called = ["MEOP", "design pressure", "inner pressure"],
            },
            Millimetres("diameter", "Inner diameter of the cylinder", "160") with
            {
                Called = ["inside radius", "inner radius", "inside diameter"],
            },
            Millimetres("wall", "Wall chosen for the cylinder", "8") with
            {
                Called = ["wall", "thickness", "outer radius"],
            }
        ),
        new(
            "Factors of the ladder",
            Plain("proof", "Proof factor", "1.5", "proof factor"),
            Plain("burst", "Burst factor", "2", "burst factor"),
            Plain("correction", "Environmental correction", "1", "environmental correction"),
            new DeskField(
                "source",
                "Source of the factors",
                "example; name document, edition and clause"
            )
            {
                Kind = FieldKind.Text,
                Called = ["source of the factors"],
            },
            new DeskField("hold", "Hold at proof", "5") { FixedUnit = "min" }
        ),
        new(
            "Material",
            Stress("allowable", "Allowable stress", "100", "allowable stress", "allowable"),
            Plain("joint", "Weld joint factor", "0.7", "joint factor", "weld factor"),
            Stress("yield", "Yield strength", "240", "yield strength"),
            Stress("ultimate", "Ultimate strength", "290", "ultimate strength"),
            Plain("hardening", "Hardening exponent", "0.1", "hardening exponent"),
            new DeskField("density", "Density", "2700")
            {
                FixedUnit = "kg/m³",
                Called = ["density"],
            }
        ),
    ];

    public Calculation? Calculate(DeskEntries entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        var task = SizingTask.Read(entries);
        if (
            !entries.AreClean
            || !entries.Take(PressureLadder.Compute(task.Meop, task.Factors), out var ladder)
        )
        {
            return null;
        }

        var design = task.DesignFor(task.Meop);
        var isComputed =
            entries.Take(ShapeComparison.Compute(task.Volume, design, task.Density), out var shapes)
            & entries.Take(EnThickness.Cylinder(design), out var european)
            & entries.Take(AsmeThickness.CylinderHoop(design), out var american)
            & entries.Take(
                CylinderBurst.Compute(task.Material, task.Diameter, task.Wall),
                out var burst
            );
        if (!isComputed)
        {
            return null;
        }

        var stages = SizingFigures.Stages(entries, task, ladder);
        var performance = SizingFigures.Performance(entries, task, burst!, shapes!);
        return !entries.AreClean
            ? null
            : new Calculation
            {
                Title = Title,
                Figures =
                [
                    new("Proof pressure", entries.Show(ladder.Proof)),
                    new("Least burst pressure", entries.Show(ladder.LeastBurst)),
                    new("Wall needed, form of EN 13445-3", entries.Show(european, digits: 3)),
                    new("Wall needed, form of ASME VIII-1", entries.Show(american, digits: 3)),
                    new("Predicted burst, lowest", entries.Show(burst!.Lowest, digits: 3)),
                    new("Predicted burst, highest", entries.Show(burst.Highest, digits: 3)),
                    .. performance,
                ],
                Statements =
                [
                    .. SizingFigures.Statements(entries, task, ladder, burst, european, american),
                ],
                Ladder = SizingFigures.Plot(ladder, task.Hold),
                Tables = [stages, SizingFigures.Shapes(entries, shapes!)],
                Cautions = [DeskCautions.Pressure, DeskCautions.Decides],
            };
    }

    private static DeskField Millimetres(string name, string label, string initial) =>
        DeskField.Of<Length>(name, label, initial);

    private static DeskField Stress(
        string name,
        string label,
        string initial,
        params IReadOnlyList<string> called
    ) => DeskField.Of<Pressure>(name, label, initial, UnitScale.Stress) with { Called = called };

    private static DeskField Plain(
        string name,
        string label,
        string initial,
        params IReadOnlyList<string> called
    ) => new(name, label, initial) { Called = called };
}
