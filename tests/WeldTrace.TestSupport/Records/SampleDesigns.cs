using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.TestSupport.Records;

public static class SampleDesigns
{
    /// <summary>
    /// A reservoir with one lap joint of two concentric passes in opposite senses: 10 and 20 weld, 30 leak test,
    /// 40 pressure test, 50 section, 60 acceptance.
    /// </summary>
    public static DesignContent Content(string procedureNumber = "WP-07") =>
        new(
            "6061",
            "T6",
            Length.FromMillimetres(124),
            Length.FromMillimetres(3),
            Volume.FromSi(0.004),
            Pressure.FromBar(900),
            [
                new Joint(
                    "J1",
                    "end to shell",
                    "lap",
                    Length.FromMillimetres(3),
                    procedureNumber,
                    [
                        Pass(1, 62, RotationSense.CounterClockwise),
                        Pass(2, 56, RotationSense.Clockwise),
                    ]
                ),
            ],
            Pressures,
            [
                new(10, StepKind.Weld, "Weld J1, outer pass", "J1", 1, StopPoint.None),
                new(20, StepKind.Weld, "Weld J1, inner pass", "J1", 2, StopPoint.None),
                new(30, StepKind.LeakTest, "Leak test", null, null, StopPoint.Hold),
                new(40, StepKind.PressureTest, "Pressure test", null, null, StopPoint.Witness),
                new(50, StepKind.Section, "Section J1", "J1", null, StopPoint.None),
                new(60, StepKind.Acceptance, "Accept the vessel", null, null, StopPoint.Hold),
            ]
        );

    public static VesselDesign Released(
        string number = "NR-4",
        string procedureNumber = "WP-07",
        DesignContent? content = null
    )
    {
        var design = Accept.Value(
            VesselDesign.Draw(
                number,
                "Nitrogen reservoir, 4 l",
                content ?? Content(procedureNumber),
                SamplePeople.Engineer,
                SampleTime.Start
            )
        );
        Accept.All(design.Release(null, SamplePeople.SecondEngineer, SampleTime.Start));
        return design;
    }

    private static PressurePlan Pressures =>
        new(
            Pressure.FromBar(12),
            "nitrogen",
            [
                new(PressureStageKind.OperatingHold, 1, 600),
                new(PressureStageKind.ReturnToZero, 0, 0),
                new(PressureStageKind.Proof, 1.5m, 300),
            ],
            "Design note DN-12",
            0.02m,
            Pressure.FromBar(0.1),
            Length.FromMillimetres(0.05),
            Pressure.FromBar(2),
            LeakRate.FromSi(1e-5),
            600
        );

    private static PassPlan Pass(int number, double radiusMillimetres, RotationSense travel) =>
        new(
            number,
            Length.FromMillimetres(radiusMillimetres),
            Angle.FromDegrees(15),
            travel,
            Angle.Zero
        );
}
