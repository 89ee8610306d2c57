using WeldTrace.Documents.Drawings;
using WeldTrace.Documents.Traveler;
using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Documents.Tests.Samples;

internal static class SampleRuns
{
    public static WeldRunSheet Superseded() =>
        new()
        {
            Reference = "WR-0880",
            Joint = "J1",
            Pass = "1",
            State = new StateMark("replaced", MarkShape.Cross),
            Operator = "Tomé Arriaga",
            Machine = "FSW 2",
            Tool = "T-109",
            ProcedureRevision = "WPS 12 revision C",
            StartedAt = SampleTraveler.At(13, 17, 2),
            EndedAt = SampleTraveler.At(13, 17, 5),
            Travelled = Length.FromMillimetres(398),
            Superseded = new Correction(
                "Tool serial scanned from the neighbouring holder; the log shows T-101",
                "Tomé Arriaga",
                SampleTraveler.At(13, 17, 31),
                "WR-0881"
            ),
        };

    public static WeldRunSheet Run(string reference, string joint, string pass, int seed) =>
        new()
        {
            Reference = reference,
            Joint = joint,
            Pass = pass,
            State =
                seed == 2
                    ? SampleTraveler.Passed
                    : new StateMark("passed, finding", MarkShape.Triangle),
            Operator = "Tomé Arriaga",
            Machine = "FSW 2, spindle 1",
            Tool = "T-101 (TD-6 scroll, threaded pin)",
            ProcedureRevision = "WPS 12 revision C",
            StartedAt = SampleTraveler.At(13, 17, 2),
            EndedAt = SampleTraveler.At(13, 17, 5),
            Travelled = Length.FromMillimetres(397.9),
            Particulars =
            [
                new("Charged to tool", "0.398 m; 41.2 m of 60.0 m used"),
                new("Log file", $"{reference}.csv, 12 columns, 1 806 rows"),
                new("SHA-256 of log", "9f2c41d0a7b3e865"),
            ],
            Checks =
            [
                new("Procedure", "WPS 12 revision C is released.", "records, F2"),
                new("Fit-up, jigging and tacking", "Held as the procedure says.", "Tomé Arriaga"),
            ],
            Phases =
            [
                Phase("plunge", 0, 27.6),
                Phase("dwell", 27.6, 31.6),
                Phase("traverse", 31.6, 150.9),
                Phase("exit", 150.9, 160),
            ],
            PhaseFigures =
            [
                new(
                    "dwell",
                    "Axial force",
                    "kN",
                    ["7.91", "0.04", "7.83", "7.91", "7.98", "0.07", "0.06"]
                ),
            ],
            PhaseNotes = ["dwell: 4.0 s, 0.0 mm of seam."],
            Windows =
            [
                Window(
                    "Spindle speed",
                    "rev/min",
                    "800",
                    "780",
                    "820",
                    "797",
                    "800",
                    "803",
                    SampleTraveler.Passed
                ),
                Window(
                    "Travel speed",
                    "mm/min",
                    "200",
                    "190",
                    "210",
                    "198",
                    "200",
                    "202",
                    SampleTraveler.Passed
                ),
                Window(
                    "Axial force",
                    "kN",
                    "7.50",
                    "6.80",
                    "8.20",
                    "6.91",
                    "7.52",
                    seed == 2 ? "8.11" : "8.64",
                    seed == 2 ? SampleTraveler.Passed : SampleTraveler.Failed
                ),
                Window("Tilt angle", "°", "2.0", "1.8", "2.2", null, "2.0", null, null),
            ],
            Excursions = seed == 2 ? [] : [Excursion()],
            Seam = new SeamPlan
            {
                TrackRadius = Length.FromMillimetres(60),
                Travel = RotationSense.Clockwise,
                Overlap = Angle.FromDegrees(20),
                Travelled = Length.FromMillimetres(397.9),
                Excursions =
                    seed == 2
                        ? []
                        :
                        [
                            new SeamExcursion(
                                "1",
                                "axial force",
                                Length.FromMillimetres(101),
                                Length.FromMillimetres(119)
                            ),
                        ],
            },
            Chart = SampleLog.Plot(seed),
        };

    private static ExcursionLine Excursion() =>
        new("1", "Axial force", "kN")
        {
            Extreme = "8.64",
            Limit = "8.20",
            From = Length.FromMillimetres(101),
            To = Length.FromMillimetres(119),
            Duration = TimeSpan.FromSeconds(5.4),
            Finding = "NCR-0052",
        };

    private static PhaseLine Phase(string name, double from, double to) =>
        new(name, TimeSpan.FromSeconds(from), TimeSpan.FromSeconds(to));

    private static WindowLine Window(
        string parameter,
        string unit,
        string? setPoint,
        string? lower,
        string? upper,
        string? least,
        string? mean,
        string? greatest,
        StateMark? verdict
    ) =>
        new(parameter, unit)
        {
            SetPoint = setPoint,
            Lower = lower,
            Upper = upper,
            ObservedMinimum = least,
            ObservedMean = mean,
            ObservedMaximum = greatest,
            Verdict = verdict,
        };
}
