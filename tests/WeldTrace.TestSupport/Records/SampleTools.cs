using WeldTrace.Domain.Tooling;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.TestSupport.Records;

public static class SampleTools
{
    /// <summary>A tool design: shoulder 15 mm, pin 5 mm by 3 mm.</summary>
    public static ToolDesign Design(string number = "TD-15", double lifeMetres = 40) =>
        Accept.Value(
            ToolDesign.Enter(
                number,
                1,
                new ToolGeometry(
                    Length.FromMillimetres(15),
                    Length.FromMillimetres(5),
                    Length.FromMillimetres(3),
                    "H13, 52 HRC",
                    Length.FromMetres(lifeMetres),
                    "Wear study WS-4"
                ),
                SamplePeople.Engineer,
                SampleTime.Start
            )
        );

    public static Tool InService(ToolDesign design, string mark = "T-15-01")
    {
        var tool = Accept.Value(Tool.Enter(mark, design, SamplePeople.Engineer, SampleTime.Start));
        Accept.All(tool.PutInService(SamplePeople.Engineer, SampleTime.Start));
        return tool;
    }
}
