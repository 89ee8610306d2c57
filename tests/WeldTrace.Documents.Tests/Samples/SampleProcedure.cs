using WeldTrace.Documents.Procedures;

namespace WeldTrace.Documents.Tests.Samples;

internal static class SampleProcedure
{
    public static ProcedureSheetModel Model() =>
        new()
        {
            Stamp = SampleTraveler.Stamp,
            RecordAddress = "https://weldtrace.caboraso.example/procedures/12/C",
            Identity = new ProcedureIdentity
            {
                Number = "12",
                Title = "Circular lap-butt joint of shell and end, 5 mm",
                Revision = "C",
                State = new StateMark("released", MarkShape.Disc),
                IsPreliminary = false,
                Supersedes = "WPS 12 revision B",
                QualifiedBy = "WPQR 9, 2031-02-17",
                ReleasedAt = SampleTraveler.At(2, 8, 30),
            },
            Before =
            [
                new(
                    "Scope",
                    [
                        new("Material group", "23.1 (EN AW-6082), parent to parent"),
                        new("Temper", "T6"),
                        new("Thickness", "4.5 mm to 5.5 mm"),
                        new("Joint line radius", "60 mm to 90 mm"),
                        new("Tool design", "TD-6, scroll shoulder Ø 18 mm, threaded pin Ø 6 mm"),
                        new("Machine", "FSW 2, force control"),
                        new("Position", "PA"),
                        new("Time since cleaning", "≤ 8 h"),
                    ]
                ),
            ],
            Parameters =
            [
                Window("Spindle speed", "rev/min", "800", "780", "820", isEssential: true),
                Window("Travel speed", "mm/min", "200", "190", "210", isEssential: true),
                Window("Axial force", "kN", "7.50", "6.80", "8.20", isEssential: true),
                Window("Tilt angle", "°", "2.0", "1.8", "2.2", isEssential: true),
                Window("Plunge depth", "mm", "4.85", "4.80", "4.90", isEssential: true),
                Window("Plunge rate", "mm/min", "12", "8", "15", isEssential: false) with
                {
                    Remark = "slower below 10 °C in the hall",
                },
                Window("Dwell at start", "s", "4.0", "3.0", "6.0", isEssential: false),
                Window("Clamping force", "kN", null, "20", null, isEssential: false),
            ],
            Computed =
            [
                new("Weld pitch", "mm/rev")
                {
                    AtSetPoint = "0.250",
                    Least = "0.232",
                    Greatest = "0.269",
                    Working =
                        "Travel speed over spindle speed: 200 / 800; least 190 / 820, greatest 210 / 780.",
                    Judgement = new StateMark("inside 0.20 to 0.30", MarkShape.Disc),
                },
                new("Peripheral speed of the shoulder", "m/s")
                {
                    AtSetPoint = "0.754",
                    Least = "0.735",
                    Greatest = "0.773",
                    Working = "π × 18 mm × spindle speed.",
                },
                new("Peak temperature estimate", "°C")
                {
                    AtSetPoint = "462",
                    Working = "Heat index estimate; its published range does not cover this alloy.",
                    Judgement = new StateMark("outside validity", MarkShape.Triangle),
                },
            ],
            Joints = [SampleJoints.Joint("J1", "Shell to end, two passes")],
            After =
            [
                new(
                    "Instructions",
                    [
                        new("Cleaning", "degrease, brush, wipe with ethanol"),
                        new("Clamping", "fixture FX-3, torque 12 N·m in the order 1-4-2-5-3-6"),
                        new("Start", "datum mark at the top"),
                        new("Between passes", "cool below 60 °C, remove flash"),
                    ]
                ),
            ],
            Changes =
            [
                "Upper limit of the axial force lowered from 8.50 kN to 8.20 kN.",
                "Pass 2 now travels against pass 1.",
            ],
            Signatures =
            [
                Signed("Duarte Nogueira", "written", 1),
                Signed("Leonor Vaz", "approved for release", 2),
            ],
            Sources =
            [
                new("Essential variables", "ISO 25239-4:2020, clause 7")
                {
                    Checked = "against own copy by L. Vaz, 2031-02-03",
                },
                new("Weld pitch band 0.20 mm to 0.30 mm", "common practice, no published source"),
            ],
            UncheckedLimits =
            [
                "Time from cleaning to welding: 8 h (common practice, no published source).",
            ],
        };

    private static ParameterLine Window(
        string name,
        string unit,
        string? setPoint,
        string? lower,
        string? upper,
        bool isEssential
    ) =>
        new(name, unit)
        {
            SetPoint = setPoint,
            Lower = lower,
            Upper = upper,
            IsEssential = isEssential,
            Remark = isEssential ? "" : null,
        };

    private static SignatureEntry Signed(string name, string meaning, int day) =>
        new(
            name,
            meaning,
            SampleTraveler.At(day, 8, 30),
            "WPS 12 C",
            "a7e2c90b14d8f36650c1b7e92d03fa48c5716be0d94832af6eb07d5c1938f2e4"
        );
}
