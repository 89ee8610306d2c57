using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Qualification;

/// <summary>Puts the specimens of each test piece one after the other along its weld, clear of the discarded ends.</summary>
internal static class SpecimenLayout
{
    public static IReadOnlyList<PlannedTest> Place(
        Checks checks,
        IReadOnlyList<PlannedPiece> pieces,
        IReadOnlyList<(TestKind Kind, int Number)> needed,
        PlanRequest request
    )
    {
        var first = (int)Math.Ceiling(Within(request.Discard));
        var last = (int)Math.Floor(Within(request.PieceLength)) - first;
        var length = needed.Sum(n => n.Number * TestKinds.Of(n.Kind).AllowanceMillimetres);
        checks.That(
            last - first >= length && last > first,
            "too-short",
            FormattableString.Invariant(
                $"The specimens of one test piece need {length} mm of weld, {length + (2 * first)} mm with the discarded ends; the piece has {request.PieceLength.Millimetres:0} mm. Weld longer pieces."
            ),
            nameof(request.PieceLength)
        );
        return [.. pieces.SelectMany(p => OnPiece(p.Mark, needed, first, last))];
    }

    // What no piece has is refused beside this; it must not be beyond whole numbers.
    private static double Within(Length length) =>
        Math.Clamp(length.Millimetres, 0, PlanComputation.LongestPieceMillimetres);

    private static IEnumerable<PlannedTest> OnPiece(
        string mark,
        IReadOnlyList<(TestKind Kind, int Number)> needed,
        int first,
        int last
    )
    {
        var next = first;
        foreach (var (kind, number) in needed)
        {
            var allowance = TestKinds.Of(kind).AllowanceMillimetres;
            for (var n = 1; n <= number; n++)
            {
                var id = $"{mark}-{Letter(kind)}{n}";
                yield return allowance == 0
                    ? new PlannedTest(id, mark, kind, first, last)
                    : new PlannedTest(id, mark, kind, next, next + allowance);
                next += allowance;
            }
        }
    }

    private static string Letter(TestKind kind) =>
        kind switch
        {
            TestKind.Visual => "VT",
            TestKind.Penetrant => "PT",
            TestKind.Radiographic => "RT",
            TestKind.Ultrasonic => "UT",
            TestKind.TransverseTensile => "T",
            TestKind.RootBend => "RB",
            TestKind.FaceBend => "FB",
            TestKind.SideBend => "SB",
            TestKind.MacroSection => "MA",
            TestKind.MicroSection => "MI",
            TestKind.Hardness => "H",
            TestKind.Leak => "L",
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown test."),
        };
}
