using WeldTrace.Engineering.Conformity;

namespace WeldTrace.Domain.Qualification;

/// <summary>How a planned test stands.</summary>
public enum PlannedTestState
{
    /// <summary>No result yet.</summary>
    Missing,

    /// <summary>The first specimen failed; two replacements must pass.</summary>
    NeedsReplacements,

    /// <summary>Passed, at once or by both replacements.</summary>
    Passed,

    /// <summary>A replacement failed too.</summary>
    Failed,
}

/// <summary>A planned piece with what was welded for it.</summary>
/// <param name="Planned">As planned.</param>
/// <param name="Welded">The piece that stands; null when none does.</param>
/// <param name="Earlier">Pieces that were spoilt or did not stand for their heat input.</param>
/// <param name="Faults">Why the latest piece doesn't stand; empty when one does or none was welded.</param>
public sealed record PieceStanding(
    PlannedPiece Planned,
    TestPiece? Welded,
    IReadOnlyList<TestPiece> Earlier,
    IReadOnlyList<string> Faults
);

/// <summary>A planned test with its results, the first failure included.</summary>
/// <param name="Planned">As planned.</param>
/// <param name="Results">Results on the standing piece in the order of testing.</param>
/// <param name="State">How it stands.</param>
public sealed record TestStanding(
    PlannedTest Planned,
    IReadOnlyList<SpecimenTest> Results,
    PlannedTestState State
);

/// <summary>How a qualification stands: what is welded and tested, and what is missing.</summary>
/// <param name="Pieces">Planned pieces.</param>
/// <param name="Tests">Planned tests.</param>
/// <param name="Missing">Everything that keeps it from being signed, each in one sentence; empty when it is complete.</param>
public sealed record QualificationStanding(
    IReadOnlyList<PieceStanding> Pieces,
    IReadOnlyList<TestStanding> Tests,
    IReadOnlyList<string> Missing
)
{
    /// <summary>Replacements that must pass after a first failure (ISO 25239-4 5.3.4, from memory).</summary>
    public const int Replacements = 2;

    /// <summary>Whether every planned result is in and passed.</summary>
    public bool IsComplete => Missing.Count == 0;

    /// <summary>Works out how a qualification stands.</summary>
    public static QualificationStanding Of(
        QualificationRecord record,
        IReadOnlyList<TestPiece> pieces,
        IReadOnlyList<SpecimenTest> tests
    )
    {
        ArgumentNullException.ThrowIfNull(record);
        var standing = record.Plan.Pieces.Select(p => Piece(p, pieces)).ToList();
        var tested = record
            .Plan.Tests.Select(t =>
                Test(t, standing.First(p => p.Planned.Mark == t.PieceMark).Welded, tests)
            )
            .ToList();
        return new QualificationStanding(
            standing,
            tested,
            [
                .. standing.Where(p => p.Welded is null).SelectMany(MissingOf),
                .. tested.Where(t => t.State != PlannedTestState.Passed).Select(MissingOf),
            ]
        );
    }

    /// <summary>How a planned test stands with the results so far, in the order of testing.</summary>
    public static PlannedTestState StateOf(IReadOnlyList<SpecimenTest> results)
    {
        ArgumentNullException.ThrowIfNull(results);
        var replacements = results.Skip(1).ToList();
        return results.Count == 0 ? PlannedTestState.Missing
            : results[0].Verdict == Verdict.Pass ? PlannedTestState.Passed
            : replacements.Any(r => r.Verdict != Verdict.Pass) ? PlannedTestState.Failed
            : replacements.Count >= Replacements ? PlannedTestState.Passed
            : PlannedTestState.NeedsReplacements;
    }

    /// <summary>The words for how a planned test stands.</summary>
    public static string StateWord(PlannedTestState state) =>
        state switch
        {
            PlannedTestState.Missing => "no result",
            PlannedTestState.NeedsReplacements => "failed, replacements needed",
            PlannedTestState.Passed => "passed",
            PlannedTestState.Failed => "failed",
            _ => throw new ArgumentOutOfRangeException(nameof(state), state, "Unknown state."),
        };

    private static PieceStanding Piece(PlannedPiece planned, IReadOnlyList<TestPiece> pieces)
    {
        var own = pieces.Where(p => p.Mark == planned.Mark).OrderBy(p => p.StartedAt).ToList();
        var good = own.FirstOrDefault(p =>
            p.State == TestPieceState.Welded && TestPieceRules.Faults(p, planned).Count == 0
        );
        return new PieceStanding(
            planned,
            good,
            [.. own.Where(p => p != good)],
            good is null && own.Count > 0 ? TestPieceRules.Faults(own[^1], planned) : []
        );
    }

    private static TestStanding Test(
        PlannedTest planned,
        TestPiece? piece,
        IReadOnlyList<SpecimenTest> tests
    )
    {
        var results = tests
            .Where(t => t.PlannedId == planned.Id && t.PieceId == piece?.Id)
            .OrderBy(t => t.Attempt)
            .ToList();
        return new TestStanding(planned, results, StateOf(results));
    }

    private static IEnumerable<string> MissingOf(PieceStanding piece) =>
        piece.Faults.Count > 0
            ? piece.Faults.Select(f => $"{f} Weld another piece {piece.Planned.Mark}.")
            : [$"Piece {piece.Planned.Mark} is not welded yet."];

    private static string MissingOf(TestStanding test)
    {
        var what = $"{test.Planned.Id}, {TestKinds.Of(test.Planned.Kind).Word}";
        return test.State switch
        {
            PlannedTestState.Missing => $"{what}: no result yet.",
            PlannedTestState.NeedsReplacements =>
                $"{what}: the specimen failed; {Replacements - test.Results.Count + 1} more must be tested and pass.",
            _ =>
                $"{what}: a replacement failed too; the qualification can't be completed with these pieces.",
        };
    }
}
