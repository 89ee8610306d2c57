using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Qualification;
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

    public static ProcedureRevision Draft(
        ToolDesign tool,
        string number = "WP-07",
        ProcedureContent? content = null
    ) =>
        Accept.Value(
            ProcedureRevision.Write(
                number,
                "Lap joint of reservoir ends",
                content ?? Content(tool),
                SamplePeople.Engineer,
                SampleTime.Start
            )
        );

    /// <summary>A procedure on trial: test pieces may be welded to it.</summary>
    public static ProcedureRevision OnTrial(
        ToolDesign tool,
        string number = "WP-07",
        ProcedureContent? content = null
    )
    {
        var revision = Draft(tool, number, content);
        Accept.All(revision.PutOnTrial(SamplePeople.Engineer, SampleTime.Start));
        return revision;
    }

    /// <summary>Qualified by test pieces and released by a second person.</summary>
    public static ProcedureRevision Released(
        ToolDesign tool,
        string number = "WP-07",
        ProcedureContent? content = null
    )
    {
        var revision = OnTrial(tool, number, content);
        // A lap joint needs few specimens, so that a tool of short life can weld the pieces too.
        var request = SampleQualifications.Request with
        {
            PieceLength = Length.FromMillimetres(200),
        };
        Release(revision, SampleQualifications.Signed(revision, tool, null, request).Record);
        return revision;
    }

    /// <summary>Accepts a qualification and releases the revision.</summary>
    public static void Release(
        ProcedureRevision revision,
        QualificationRecord record,
        ProcedureRevision? earlier = null
    ) =>
        Accept.All(
            revision.Qualify(record, SamplePeople.Engineer, SampleTime.Start),
            revision.Release(earlier, SamplePeople.SecondEngineer, SampleTime.Start)
        );
}
