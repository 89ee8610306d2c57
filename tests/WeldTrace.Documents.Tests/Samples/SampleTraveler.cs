using WeldTrace.Documents.Traveler;

namespace WeldTrace.Documents.Tests.Samples;

/// <summary>A nitrogen reservoir of an invented workshop, nearly at the end of its route.</summary>
internal static class SampleTraveler
{
    public static readonly TimeZoneInfo Zone = TimeZoneInfo.FindSystemTimeZoneById("Europe/Lisbon");

    public static readonly DocumentStamp Stamp = new()
    {
        SiteName = "Cabo Raso Float Works",
        PrintedBy = "Inês Falcão",
        PrintedAt = At(20, 16, 45),
        TimeZone = Zone,
        Ledger = new(4213, new string('a', 32) + new string('7', 32), At(20, 16, 0)),
    };

    public static readonly StateMark Passed = new("passed", MarkShape.Disc);
    public static readonly StateMark Failed = new("failed", MarkShape.Cross);
    public static readonly StateMark Waiting = new("waiting", MarkShape.Ring);

    public static DateTimeOffset At(int day, int hour, int minute) =>
        new(2031, 5, day, hour, minute, 0, TimeSpan.FromHours(1));

    public static TravelerModel Model() =>
        new()
        {
            Stamp = Stamp,
            RecordAddress = "https://weldtrace.caboraso.example/vessels/NR-0417",
            Vessel = new VesselIdentity
            {
                Serial = "NR-0417",
                Design = "Nitrogen reservoir 4 l for profiling float",
                DesignRevision = "C",
                ProductionLot = "2031-05-A",
                State = new StateMark("in work", MarkShape.HalfDisc),
                Particulars =
                [
                    new("Operating pressure (MEOP)", "120.0 bar gauge"),
                    new("Proof pressure", "180.0 bar gauge (1.5 × MEOP)"),
                    new("Volume", "4.02 l"),
                    new("Shell", "Ø 168 mm × 5.0 mm, EN AW-6082 T6"),
                ],
            },
            Components = Components(),
            Route = SampleRoute.Stations(),
            Joints =
            [
                SampleJoints.Joint("J1", "Shell to upper end"),
                SampleJoints.Joint("J2", "Shell to lower end"),
            ],
            WeldRuns =
            [
                SampleRuns.Superseded(),
                SampleRuns.Run("WR-0881", "J1", "1", 1),
                SampleRuns.Run("WR-0882", "J1", "2", 2),
            ],
            LeakTests = [SampleTests.Decay(), SampleTests.Bubbles()],
            PressureTests = [SampleTests.Proof()],
            Sections = [SampleTests.Section()],
            Findings = SampleFindings.Findings(),
            Concessions = SampleFindings.Concessions(),
            Signatures = SampleFindings.Signatures(),
            SignedOnPaper = ["Witness, if invited", "Received by"],
            UncheckedLimits =
            [
                "Largest hook height of a section: 0.30 mm (site table S-2, revision 1).",
                "Time from cleaning to welding: 8 h (common practice, no published source).",
            ],
        };

    private static ComponentLine[] Components() =>
        [
            Component("Shell", "SH-2207", "EN AW-6082 T6", "K44718", "3.1, no. 90217-1"),
            Component(
                "Upper end with port",
                "EU-1184",
                "EN AW-6082 T6",
                "K44733",
                "3.1, no. 90218-1"
            ),
            Component("Lower end", "EL-1179", "EN AW-6082 T6", "K44733", "3.1, no. 90218-1") with
            {
                Superseded = new Correction(
                    "Serial misread at issue",
                    "Duarte Nogueira",
                    At(12, 11, 5),
                    "EL-1197"
                ),
            },
            Component("Lower end", "EL-1197", "EN AW-6082 T6", "K44733", "3.1, no. 90218-1"),
        ];

    private static ComponentLine Component(
        string name,
        string serial,
        string material,
        string cast,
        string certificate
    ) =>
        new()
        {
            Name = name,
            Serial = serial,
            Material = material,
            CastNumber = cast,
            Certificate = certificate,
        };
}
