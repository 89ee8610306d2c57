using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;

namespace WeldTrace.Domain.Qualification;

/// <summary>Everything that the rules before a test piece look at.</summary>
/// <param name="Qualification">Qualification.</param>
/// <param name="Planned">Planned piece.</param>
/// <param name="Revision">Its procedure revision.</param>
/// <param name="Pieces">Pieces welded so far.</param>
/// <param name="Lots">Lots of the sides; one when both sides come from the same lot.</param>
/// <param name="Machine">Machine chosen; null when none is.</param>
/// <param name="Tool">Tool chosen; null when none is.</param>
/// <param name="ToolDesign">Design of that tool; null when no tool is chosen.</param>
/// <param name="Today">Day at the site.</param>
public sealed record TestPieceFacts(
    QualificationRecord Qualification,
    PlannedPiece Planned,
    ProcedureRevision Revision,
    IReadOnlyList<TestPiece> Pieces,
    IReadOnlyList<MaterialLot> Lots,
    Machine? Machine,
    Tool? Tool,
    ToolDesign? ToolDesign,
    DateOnly Today
)
{
    /// <summary>How the piece is called.</summary>
    public string Label => $"{Qualification.Number} piece {Planned.Mark}";
}

/// <summary>The gate before a test piece, and how its weld stands afterwards.</summary>
public static class TestPieceRules
{
    /// <summary>How far a mean may lie from the planned setting: 2 % of it (this program's own choice; no source).</summary>
    public const double SettingTolerance = 0.02;

    /// <summary>Judges all rules; a piece may be begun only when each holds.</summary>
    public static IReadOnlyList<RuleVerdict> Judge(TestPieceFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return
        [
            Order(facts),
            Trial(facts),
            MachineOf(facts),
            MachineRules.ForWelding(facts.Machine, facts.Revision.Content, facts.Today),
            ToolRules.ForWelding(
                facts.Tool,
                facts.ToolDesign,
                facts.Revision.Content,
                new ToolTask(facts.Qualification.Plan.PieceLength, facts.Label, facts.Planned.Mark),
                facts.Today
            ),
            LotsOf(facts),
        ];
    }

    /// <summary>What keeps a welded piece from standing for its end of the heat input; empty when it does.</summary>
    public static IReadOnlyList<string> Faults(TestPiece piece, PlannedPiece planned)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(planned);
        if (piece.Log is not { } log)
        {
            return [$"{piece.Label} is {TestPiece.StateWord(piece.State)}."];
        }

        List<string> faults = [];
        if (!log.ReachedEnd)
        {
            faults.Add($"{piece.Label} was not welded to its end.");
        }

        faults.AddRange(planned.Settings.Select(s => Against(piece, log, s)).OfType<string>());
        faults.AddRange(
            log.HardExcursions.Select(e =>
                FormattableString.Invariant(
                    $"{piece.Label}: {ParameterNames.Of(e.Parameter)} was {(e.IsAbove ? "above" : "below")} its window over {e.Length.Millimetres:0.0} mm."
                )
            )
        );
        return faults;
    }

    private static string? Against(TestPiece piece, Welding.LogSummary log, PieceSetting setting)
    {
        var name = ParameterNames.Of(setting.Parameter);
        if (log.Parameters.FirstOrDefault(p => p.Parameter == setting.Parameter) is not { } run)
        {
            return $"{piece.Label}: the log has no {name.ToLowerInvariant()}.";
        }

        var mean = ParameterUnits.FromSi(setting.Parameter, run.MeanSi, setting.Unit);
        return Math.Abs(run.MeanSi - setting.ValueSi) <= SettingTolerance * setting.ValueSi
            ? null
            : FormattableString.Invariant(
                $"{piece.Label}: {name} was {mean:0.#} {setting.Unit} on average; the plan asks for {setting.Value} {setting.Unit}."
            );
    }

    private static RuleVerdict Order(TestPieceFacts facts)
    {
        var mark = facts.Planned.Mark;
        var running = facts.Pieces.FirstOrDefault(p => p.State == TestPieceState.Welding);
        var good = facts.Pieces.FirstOrDefault(p =>
            p.Mark == mark
            && p.State == TestPieceState.Welded
            && Faults(p, facts.Planned).Count == 0
        );
        var against =
            facts.Qualification.State != QualificationState.Open
                ? $"{facts.Qualification.Number} is {QualificationRecord.StateWord(facts.Qualification.State)}."
            : running is not null ? $"{running.Label} isn't closed yet; finish it first."
            : good is not null ? $"Piece {mark} is welded already."
            : null;
        return Verdict(
            "F1",
            "Planned piece",
            against,
            $"Piece {mark} of {facts.Qualification.Number} is planned and not welded yet.",
            "NASA-STD-5006A w/Change 2 GWR 55"
        );
    }

    private static RuleVerdict Trial(TestPieceFacts facts) =>
        Verdict(
            "F2",
            "Procedure on trial",
            facts.Revision.State == ProcedureState.Trial
                ? null
                : $"{facts.Revision.Label} is {ProcedureRevision.StateWord(facts.Revision.State)}; test pieces are welded to a procedure on trial.",
            $"{facts.Revision.Label} is on trial.",
            "Ship-classification rules, July 2022, Ch. 12 6.3.2-6.3.6"
        );

    private static RuleVerdict MachineOf(TestPieceFacts facts)
    {
        var details = facts.Revision.Content.DetailsOrNone;
        var against = facts.Machine switch
        {
            null => "Without a machine nothing can be compared.",
            { } m when details.Machine is { } named && named.Id != m.Id =>
                $"The procedure names {named.Label}, not {m.Name}.",
            { } m
                when details.ControlMode is { } mode
                    && !mode.Equals(m.ControlMode, StringComparison.OrdinalIgnoreCase) =>
                $"The procedure is for {mode}; {m.Name} has {m.ControlMode}.",
            _ => null,
        };
        return Verdict(
            "F3",
            "Machine of the procedure",
            against,
            $"{facts.Machine?.Name}, {facts.Machine?.ControlMode}, as the procedure says.",
            "NASA-STD-5006A w/Change 2 GWR 47, 48"
        );
    }

    private static RuleVerdict LotsOf(TestPieceFacts facts)
    {
        var content = facts.Revision.Content;
        var other = content.DetailsOrNone.Other;
        string[] wanted =
        [
            $"{content.Alloy}-{content.Temper}",
            .. other is null ? Array.Empty<string>() : [$"{other.Alloy}-{other.Temper}"],
        ];
        var missing = wanted
            .Where(w =>
                !facts.Lots.Any(l =>
                    w.Equals($"{l.Alloy}-{l.Temper}", StringComparison.OrdinalIgnoreCase)
                )
            )
            .ToList();
        var strange = facts
            .Lots.Where(l =>
                !wanted.Contains($"{l.Alloy}-{l.Temper}", StringComparer.OrdinalIgnoreCase)
            )
            .Select(l => l.Number)
            .ToList();
        var against =
            missing.Count > 0 ? $"No lot of {string.Join(" and ", missing)} is chosen."
            : strange.Count > 0
                ? $"{string.Join(", ", strange)} is not of {string.Join(" or ", wanted)}."
            : null;
        return Verdict(
            "F7",
            "Material of the test piece",
            against,
            $"Lots {string.Join(", ", facts.Lots.Select(l => l.Number))} are of {string.Join(" and ", wanted)}.",
            "NASA-STD-5006A w/Change 2 GWR 47, 49"
        );
    }

    private static RuleVerdict Verdict(
        string id,
        string title,
        string? against,
        string holds,
        string source
    ) =>
        new(
            id,
            title,
            against is null ? RuleStanding.Holds : RuleStanding.Forbids,
            against ?? holds,
            source
        );
}
