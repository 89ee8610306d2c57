using WeldTrace.Documents.Traveler;

namespace WeldTrace.Documents.Tests.Samples;

internal static class SampleFindings
{
    private const string Hash = "5d3f9a1c77e0b2486ac1f04be93d52718e60cbb4f2a97d0315c8e46b9f1a2d77";

    public static FindingSheet[] Findings() =>
        [
            new()
            {
                Number = "NCR-0052",
                Title = "Axial force above the window on J1, pass 1",
                State = new StateMark("closed", MarkShape.Disc),
                OpenedBy = "process log of WR-0881",
                OpenedAt = SampleTraveler.At(13, 17, 6),
                RaisedFrom = "run WR-0881, 101 mm to 119 mm",
                Description =
                    "The axial force stood above 8.20 kN for 5.4 s, up to 8.64 kN. No flash beyond the usual is seen there.",
                Dispositions =
                [
                    new("rework", "Remove flash", "Duarte Nogueira", SampleTraveler.At(14, 8, 2))
                    {
                        Superseded = new Correction(
                            "Decided before the section was read",
                            "Duarte Nogueira",
                            SampleTraveler.At(15, 14, 0),
                            "use as is"
                        ),
                    },
                    new(
                        "use as is",
                        "Section SX-0098 taken from a run with the same excursion is inside every limit.",
                        "Duarte Nogueira",
                        SampleTraveler.At(15, 14, 10)
                    ),
                    new(
                        "verified",
                        "Visual examination repeated.",
                        "Inês Falcão",
                        SampleTraveler.At(15, 15, 0)
                    ),
                ],
            },
            new()
            {
                Number = "NCR-0055",
                Title = "Scratch on the lower end",
                State = new StateMark("open", MarkShape.Triangle),
                OpenedBy = "Inês Falcão",
                OpenedAt = SampleTraveler.At(20, 15, 31),
                RaisedFrom = "step 120",
                Description = "Scratch 11 mm long, depth not yet measured, Ø 40 mm from the axis.",
            },
        ];

    public static ConcessionSheet[] Concessions() =>
        [
            new()
            {
                Number = "CN-031",
                Rule = "F8: time since cleaning within the limit of the WPS",
                Step = "20, assembly",
                Reason = "Spindle warm-up was repeated; faces were kept under nitrogen.",
                GrantedBy = ["Duarte Nogueira", "Leonor Vaz"],
                GrantedAt = SampleTraveler.At(13, 16, 58),
            },
        ];

    public static SignatureEntry[] Signatures() =>
        [
            Signed("Tomé Arriaga", "welded as recorded", 13, "WR-0881"),
            Signed("Tomé Arriaga", "welded as recorded", 13, "WR-0882"),
            Signed("Inês Falcão", "examined and accepted", 15, "step 50"),
            Signed("Inês Falcão", "tested and accepted", 16, "LT-0311"),
            Signed("Inês Falcão", "tested and accepted", 17, "PT-0207"),
            Signed("Duarte Nogueira", "disposition decided", 15, "NCR-0052"),
        ];

    private static SignatureEntry Signed(string name, string meaning, int day, string record) =>
        new(name, meaning, SampleTraveler.At(day, 17, 40), record, Hash);
}
