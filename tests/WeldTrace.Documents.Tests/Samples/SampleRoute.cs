using WeldTrace.Documents.Traveler;

namespace WeldTrace.Documents.Tests.Samples;

internal static class SampleRoute
{
    private const string Inspector = "Inês Falcão";
    private const string Welder = "Tomé Arriaga";

    public static RouteStation[] Stations() =>
        [
            Done("10", "Receive and identify components", Inspector, 12, 9),
            Done("20", "Clean and assemble upper end", Welder, 13, 8) with
            {
                State = new StateMark("waived", MarkShape.Triangle),
                Remark = "Concession CN-031: 9 h 10 min between cleaning and welding.",
            },
            Done("30", "Weld joint J1, pass 1", Welder, 13, 17),
            Done("40", "Weld joint J1, pass 2", Welder, 13, 18),
            Done("50", "Visual examination of J1", Inspector, 14, 9) with
            {
                Point = StepPoint.Hold,
            },
            Done("60", "Clean and assemble lower end", Welder, 14, 11),
            Done("70", "Weld joint J2, pass 1", Welder, 14, 14),
            Done("80", "Weld joint J2, pass 2", Welder, 14, 15),
            Done("90", "Visual examination of J2", Inspector, 15, 9),
            Done("100", "Leak test, pressure decay", Inspector, 16, 10),
            Done(
                "110",
                "Pressure test: hold at operating pressure, return to zero, proof",
                Inspector,
                17,
                14
            ) with
            {
                Point = StepPoint.Witness,
            },
            new()
            {
                Number = "120",
                Title = "Leak test after proof, immersion",
                State = new StateMark("in progress", MarkShape.HalfDisc),
                DoneBy = Inspector,
                DoneAt = SampleTraveler.At(20, 15, 20),
            },
            new()
            {
                Number = "130",
                Title = "Final inspection and acceptance",
                State = SampleTraveler.Waiting,
                Point = StepPoint.Hold,
            },
        ];

    private static RouteStation Done(string number, string title, string by, int day, int hour) =>
        new()
        {
            Number = number,
            Title = title,
            State = SampleTraveler.Passed,
            DoneBy = by,
            DoneAt = SampleTraveler.At(day, hour, 12),
        };
}
