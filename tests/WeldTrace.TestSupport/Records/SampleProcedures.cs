using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Tooling;
using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.TestSupport.Records;

public static class SampleProcedures
{
    /// <summary>800 rev/min, 200 mm/min, 8 kN, 18 N·m in 6061-T6, 3 mm, lap; debounce 0.5 s.</summary>
    public static ProcedureContent Content(ToolDesign tool) =>
        new(
            "6061",
            "T6",
            Length.FromMillimetres(3),
            "lap",
            tool.Id,
            tool.Label,
            RotationSense.Clockwise,
            [
                new(WeldParameter.SpindleSpeed, 800, 780, 820, "rev/min", true),
                new(WeldParameter.TravelSpeed, 200, 190, 210, "mm/min", true),
                new(WeldParameter.AxialForce, 8, 7.2m, 8.8m, "kN", true),
                new(WeldParameter.Torque, 18, 14, 22, "N·m", false),
                new(WeldParameter.PlungeDepth, 3.2m, 3.1m, 3.3m, "mm", true),
                new(WeldParameter.DwellTime, 3, 2, 4, "s", false),
            ],
            0.5m,
            ""
        );

    public static ProcedureRevision Draft(ToolDesign tool, string number = "WP-07") =>
        Accept.Value(
            ProcedureRevision.Write(
                number,
                "Lap joint of reservoir ends",
                Content(tool),
                SamplePeople.Engineer,
                SampleTime.Start
            )
        );

    public static ProcedureRevision Released(ToolDesign tool, string number = "WP-07")
    {
        var revision = Draft(tool, number);
        Accept.All(
            revision.PutOnTrial(SamplePeople.Engineer, SampleTime.Start),
            revision.Qualify(SamplePeople.Engineer, SampleTime.Start),
            revision.Release(null, SamplePeople.SecondEngineer, SampleTime.Start)
        );
        return revision;
    }
}
