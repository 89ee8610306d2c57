using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Web.Demo;

/// <summary>Test plan of the invented reservoir, and what its proof pressure follows from.</summary>
internal static class DemoPlan
{
    private const string Specification = "Design specification DS-10 of this workshop";

    public static LadderBasis Basis { get; } =
        new(
            LadderRule.Factors,
            1.5m,
            2.0m,
            null,
            Pressure.FromMegapascals(290),
            Pressure.FromMegapascals(290)
        )
        {
            PermanentExpansionPercent = 10,
            Wall = new WallStrength(
                Pressure.FromMegapascals(240),
                Pressure.FromMegapascals(290),
                0.06m,
                1,
                $"{Specification}, section 2: least strength of 6061-T6; the round welds carry no hoop stress"
            ),
        };

    /// <summary>The visual examination of a reservoir without flaw.</summary>
    public static ExaminationReport Seen { get; } =
        new(
            PlannedExamination.Visual,
            "ISO 17637:2016",
            "ISO 25239-5:2020, level C",
            "VT-4",
            new ViewingConditions(new("800", "lx"), new("300", "mm"), new("60", "°")),
            "as welded, mirror and lens 2.5 times",
            "both seams over 360°, 15 mm on each side, outside",
            "the inside, which the ends close",
            []
        );

    /// <summary>The examination of a reservoir's dimensions, all as drawn.</summary>
    public static ExaminationReport Measured { get; } =
        new(
            PlannedExamination.Dimensional,
            Specification,
            $"{Specification}, drawing",
            "MI-2",
            null,
            "at 20 °C, burr taken off, on the surface plate",
            "length over the ends, outside diameter at three heights, both bosses, step at both seams",
            "the inside, which the ends close",
            []
        );

    /// <summary>The report of the examination that comes next.</summary>
    public static ExaminationReport Examination(TestFacts facts) =>
        facts.NotYetExamined.Contains(PlannedExamination.Visual) ? Seen : Measured;

    public static IReadOnlyList<PlannedMethod> Examinations { get; } =
    [
        new(null, PlannedExamination.Visual, 100, "ISO 17637:2016", "ISO 25239-5:2020", "level C"),
        new(null, PlannedExamination.Dimensional, 100, Specification, Specification, "drawing"),
        new(
            null,
            PlannedExamination.Leak,
            100,
            "EN 13184:2001",
            Specification,
            "section 4.2",
            PlannedExamination.Penetrant,
            "DS-10, 5.3"
        ),
        new(null, PlannedExamination.Pressure, 100, Specification, Specification, "section 4"),
        new("J1", PlannedExamination.Section, 10, "ISO 17639:2022", Specification, "section 6"),
    ];
}
