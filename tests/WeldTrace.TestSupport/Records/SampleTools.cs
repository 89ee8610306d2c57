using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.TestSupport.Records;

public static class SampleTools
{
    /// <summary>Least pin length 2.85 mm and diameter 4.80 mm; a wear inspection every 10 m or 60 days by WI-30.</summary>
    public static ToolUpkeep Upkeep { get; } =
        new(
            new Measured("2.85", "mm"),
            new Measured("4.80", "mm"),
            Length.FromMetres(10),
            60,
            "WI-30"
        );

    /// <summary>A tool design: shoulder 15 mm, pin 5 mm by 3 mm, with <see cref="Upkeep"/>.</summary>
    public static ToolDesign Design(
        string number = "TD-15",
        double lifeMetres = 40,
        bool hasSeparateParts = false,
        double pinMillimetres = 3
    )
    {
        var design = Accept.Value(
            ToolDesign.Enter(
                number,
                1,
                new ToolGeometry(
                    Length.FromMillimetres(15),
                    Length.FromMillimetres(5),
                    Length.FromMillimetres(pinMillimetres),
                    "H13, 52 HRC",
                    Length.FromMetres(lifeMetres),
                    "Wear study WS-4",
                    hasSeparateParts ? true : null,
                    hasSeparateParts ? Length.FromMetres(3 * lifeMetres) : null
                ),
                SamplePeople.Engineer,
                SampleTime.Start
            )
        );
        Accept.All(design.LayDownUpkeep(Upkeep, SamplePeople.Engineer, SampleTime.Start));
        return design;
    }

    public static Tool InService(ToolDesign design, string mark = "T-15-01")
    {
        ArgumentNullException.ThrowIfNull(design);
        var parts = design.Geometry.HasSeparateParts is true
            ? new ToolPartMarks(mark + "-P1", mark + "-S1")
            : null;
        var tool = Accept.Value(
            Tool.Enter(mark, design, SamplePeople.Engineer, SampleTime.Start, parts)
        );
        Accept.All(
            tool.Inspect(
                new InspectionEntry(ToolInspectionKind.FirstUse, true, "", null, null),
                design,
                SampleTime.Day,
                SamplePeople.Operator,
                SampleTime.Start
            ),
            tool.PutInService(SamplePeople.Engineer, SampleTime.Start)
        );
        return tool;
    }
}
