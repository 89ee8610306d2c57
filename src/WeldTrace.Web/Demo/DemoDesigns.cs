using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Web.Demo;

/// <summary>The invented reservoir of a profiling float: a tube with two ends, each end welded by two concentric passes.</summary>
internal static class DemoDesigns
{
    public const string Procedure = "WP-101";

    public static ToolGeometry Tool { get; } =
        new(
            Length.FromMillimetres(15),
            Length.FromMillimetres(5.5),
            Length.FromMillimetres(5.6),
            "H13 tool steel, 52 HRC",
            Length.FromMetres(60),
            "Wear trial WT-7, five tools"
        );

    public static ProcedureContent Content(DemoProcedureParts parts, decimal upperForce) =>
        new(
            "6061",
            "T6",
            Length.FromMillimetres(6),
            "lap",
            parts.Tools.Design.Id,
            parts.Tools.Design.Label,
            RotationSense.Clockwise,
            [
                new(WeldParameter.SpindleSpeed, 800, 770, 830, "rev/min", true),
                new(WeldParameter.TravelSpeed, 200, 180, 220, "mm/min", true),
                new(WeldParameter.AxialForce, 8.0m, 7.0m, upperForce, "kN", true),
                new(WeldParameter.Torque, 18, 14, 22, "N·m", false),
                new(WeldParameter.DwellTime, 3.0m, 2.0m, 4.0m, "s", true),
                new(WeldParameter.TiltAngle, 2.0m, 1.5m, 2.5m, "°", true),
            ],
            0.5m,
            ""
        )
        {
            Details = Details(parts.Machine, parts.Instruments),
        };

    private static ProcedureDetails Details(Machine machine, DemoInstruments instruments) =>
        new()
        {
            OuterDiameter = Length.FromMillimetres(170),
            Class = JointClass.B,
            Penetration = Penetration.Full,
            LargestGap = new Measured("0.3", "mm"),
            LargestMismatch = new Measured("0.3", "mm"),
            CleaningLimit = new Measured("4", "h"),
            Machine = new NamedRecord(machine.Id, machine.Name),
            ControlMode = machine.ControlMode,
            ToolType = ToolType.FixedProbe,
            PostWeld = PostWeldCondition.NaturalAgeing,
            Instruments = [new NamedRecord(instruments.LoadCell.Id, instruments.LoadCell.Mark)],
            Particulars = Particulars,
        };

    private static IReadOnlyList<Particular> Particulars =>
        [
            new(ProcedureField.Standard, "Design specification DS-10 of this workshop", false),
            new(ProcedureField.ProductForm, "plate on extruded tube", false),
            new(ProcedureField.Fixture, "Clamp ring CR-2 on the rotary table", true),
            new(ProcedureField.ClampType, "Eight toe clamps, 12 N·m, opposite ones in turn", false),
            new(ProcedureField.BackingMaterial, "Anvil of tool steel", true),
            new(ProcedureField.EdgePreparation, "Turned, Ra 3.2", false),
            new(ProcedureField.WeldingPosition, "flat", false),
            new(
                ProcedureField.WeldSequence,
                "Inner pass first, then the outer one in the other sense",
                false
            ),
            new(ProcedureField.OverlapPlace, "20° past the start", false),
            new(ProcedureField.ExitPlace, "On the run-off ring, cut off", false),
            new(
                ProcedureField.CleaningBefore,
                "Wiped with solvent, brushed with a brush kept for aluminium",
                false
            ),
            new(ProcedureField.CleaningBetween, "Flash scraped off, wiped", false),
            new(ProcedureField.Interpass, "below 60 °C", false),
            new(ProcedureField.FlashRemoval, "Scraped by hand", false),
        ];

    public static DesignContent Reservoir { get; } =
        new(
            "6061",
            "T6",
            Length.FromMillimetres(160),
            Length.FromMillimetres(5),
            Volume.FromLitres(10.6),
            Pressure.FromMegapascals(105),
            [End("J1", "lower end to shell", 0), End("J2", "upper end to shell", 90)],
            new PressurePlan(
                Pressure.FromBar(40),
                "water",
                [
                    new(PressureStageKind.OperatingHold, 1.0m, 600),
                    new(PressureStageKind.ReturnToZero, 0, 0),
                    new(PressureStageKind.Proof, 1.5m, 300),
                    new(PressureStageKind.Burst, 2.0m, 0, Pressure.FromBar(20)),
                ],
                "Design specification DS-10 of this workshop, section 4; not checked against a code",
                0.02m,
                Pressure.FromBar(0.8),
                Length.FromMillimetres(0.05),
                Pressure.FromBar(10),
                LeakRate.FromSi(0.02),
                1800
            )
            {
                Basis = DemoPlan.Basis,
            },
            Route,
            InspectionDocumentType.Type31
        )
        {
            Examinations = DemoPlan.Examinations,
        };

    private static IReadOnlyList<RouteTemplateStep> Route =>
        [
            new(10, StepKind.Preparation, "Clean, fit up and clamp", null, null, StopPoint.None),
            new(20, StepKind.Weld, "Weld lower end, pass 1", "J1", 1, StopPoint.None),
            new(30, StepKind.Weld, "Weld lower end, pass 2", "J1", 2, StopPoint.None),
            new(40, StepKind.Weld, "Weld upper end, pass 1", "J2", 1, StopPoint.None),
            new(50, StepKind.Weld, "Weld upper end, pass 2", "J2", 2, StopPoint.None),
            new(
                60,
                StepKind.Examination,
                "Visual examination of both seams",
                null,
                null,
                StopPoint.Hold
            ),
            new(
                65,
                StepKind.Examination,
                "Dimensional examination by the drawing",
                null,
                null,
                StopPoint.None
            ),
            new(70, StepKind.Section, "Section of the run-off ring", "J1", null, StopPoint.None),
            new(80, StepKind.LeakTest, "Leak test before proof", null, null, StopPoint.None),
            new(90, StepKind.PressureTest, "Staged pressure test", null, null, StopPoint.Witness),
            new(100, StepKind.LeakTest, "Leak test after proof", null, null, StopPoint.None),
            new(110, StepKind.Acceptance, "Final acceptance", null, null, StopPoint.Hold),
        ];

    private static Joint End(string code, string name, double startDegrees) =>
        new(
            code,
            name,
            "lap",
            Length.FromMillimetres(6),
            Procedure,
            [
                new(
                    1,
                    Length.FromMillimetres(62),
                    Angle.FromDegrees(20),
                    RotationSense.CounterClockwise,
                    Angle.FromDegrees(startDegrees)
                ),
                new(
                    2,
                    Length.FromMillimetres(72),
                    Angle.FromDegrees(20),
                    RotationSense.Clockwise,
                    Angle.FromDegrees(startDegrees + 180)
                ),
            ]
        )
        {
            Class = JointClass.B,
        };
}
