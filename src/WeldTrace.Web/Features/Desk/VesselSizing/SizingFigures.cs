using System.Globalization;
using WeldTrace.Documents;
using WeldTrace.Documents.CalculationSheets;
using WeldTrace.Documents.Drawings;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Vessels;
using WeldTrace.Web.Components.Figures;

namespace WeldTrace.Web.Features.Desk.VesselSizing;

/// <summary>What follows for a vessel.</summary>
internal static class SizingFigures
{
    // Nobody entered a rate, so the flanks are only drawn, at a fixed width.
    private static readonly TimeSpan Flank = TimeSpan.FromMinutes(2);

    /// <summary>Stress and margin of the chosen wall at each pressure of the ladder.</summary>
    public static CalculationTable Stages(
        DeskEntries entries,
        SizingTask task,
        PressureLadder ladder
    )
    {
        var welded = task.DesignFor(task.Meop).WeldedStress;
        List<IReadOnlyList<string>> rows = [];
        foreach (
            var (name, pressure) in new[]
            {
                ("operating pressure", task.Meop),
                ("proof", ladder.Proof),
                ("least burst", ladder.LeastBurst),
            }
        )
        {
            var thick = ThickCylinderStress.Compute(
                pressure,
                Pressure.Zero,
                task.Diameter / 2,
                (task.Diameter / 2) + task.Wall
            );
            if (
                entries.Take(thick, out var stress)
                && entries.Take(
                    MarginOfSafety.Compute(welded, stress.HoopAt(stress.InnerRadius), 1),
                    out var margin
                )
            )
            {
                rows.Add([
                    name,
                    entries.Show(pressure),
                    entries.Show(stress.HoopAt(stress.InnerRadius), UnitScale.Stress, 3),
                    entries.Show(stress.VonMisesAt(stress.InnerRadius), UnitScale.Stress, 3),
                    margin.Value.ToString("+0.00;−0.00;0.00", CultureInfo.InvariantCulture),
                ]);
            }
        }

        return new(
            "Chosen wall: stress at the bore, and margin against the allowable stress of the weld",
            ["At", "Pressure, gauge", "Hoop", "Von Mises", "Margin"],
            rows
        );
    }

    public static CalculationTable Shapes(DeskEntries entries, ShapeComparison shapes) =>
        new(
            "Shapes for this volume and operating pressure",
            [
                "Shape",
                "Inner diameter",
                "Cylindrical length",
                "Wall",
                "Wall of the heads",
                "Bare shell",
            ],
            [
                .. new[] { shapes.Cylinder, shapes.Sphere }.Select(shape =>
                    (IReadOnlyList<string>)
                        [
                            shape.Name,
                            entries.Show(shape.InsideDiameter),
                            entries.Show(shape.CylinderLength),
                            entries.Show(shape.Wall, digits: 3),
                            entries.Show(shape.HeadWall, digits: 3),
                            entries.Show(shape.ShellMass, digits: 3),
                        ]
                ),
            ]
        );

    /// <summary>Lowest predicted burst pressure times volume, over the weight of a bare cylinder of the chosen wall.</summary>
    public static IReadOnlyList<LabelledValue> Performance(
        DeskEntries entries,
        SizingTask task,
        CylinderBurst burst,
        ShapeComparison shapes
    )
    {
        var (inner, wall) = (task.Diameter.Metres, task.Wall.Metres);
        var outer = inner + (2 * wall);
        var shell =
            (
                Math.PI
                / 4
                * ((outer * outer) - (inner * inner))
                * shapes.Cylinder.CylinderLength.Metres
            ) + (Math.PI / 6 * (Math.Pow(outer, 3) - Math.Pow(inner, 3)));
        var mass = Mass.FromKilograms(shell * task.Density);
        return entries.Take(
            VesselPerformance.Compute(burst.Lowest, task.Volume, mass),
            out var performance
        )
            ?
            [
                new("Bare cylinder of the chosen wall", entries.Show(mass, digits: 3)),
                new(
                    "Lowest burst × volume over weight",
                    entries.Show(performance.Factor, UnitScale.Path, 3)
                ),
            ]
            : [];
    }

    public static IEnumerable<string> Statements(
        DeskEntries entries,
        SizingTask task,
        PressureLadder ladder,
        CylinderBurst burst,
        Length european,
        Length american
    )
    {
        var needed = european > american ? european : american;
        yield return task.Wall < needed
            ? $"The chosen wall, {entries.Show(task.Wall)}, is thinner than the {entries.Show(needed, digits: 3)} that the forms ask for at the operating pressure."
            : $"The chosen wall, {entries.Show(task.Wall)}, is not thinner than what the forms ask for at the operating pressure.";
        yield return burst.Lowest < ladder.LeastBurst
            ? "The lowest prediction lies below the least burst pressure: this wall is not shown to hold it."
            : "Every prediction lies above the least burst pressure; a burst test decides.";
        yield return "Corrosion, tolerances, ends, openings and offsets come on top of these forms.";
    }

    public static PressureLadderPlot Plot(PressureLadder ladder, TimeSpan hold)
    {
        var held = hold > TimeSpan.Zero ? hold : Flank;
        var (atMeop, atProof) = (Flank + held, (Flank + held) * 2);
        return new PressureLadderPlot
        {
            Stages =
            [
                new LadderStage("operating pressure", ladder.Meop, TimeSpan.Zero, Flank, atMeop),
                new LadderStage("proof", ladder.Proof, atMeop, atMeop + Flank, atProof),
                new LadderStage(
                    "to zero",
                    Pressure.Zero,
                    atProof,
                    atProof + Flank,
                    atProof + Flank
                ),
            ],
            Levels =
            [
                new PressureLevel("MEOP", ladder.Meop),
                new PressureLevel("least burst", ladder.LeastBurst),
            ],
        };
    }
}
