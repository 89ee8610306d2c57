using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Welding;

/// <summary>The seven checks before welding (ISO 25239-5:2020 4.12.2): what records answer is read from them, the welder confirms the rest.</summary>
public static class PreWeldChecks
{
    /// <summary>Clause that asks for them.</summary>
    public const string Source = "ISO 25239-5:2020 4.12.2";

    /// <summary>The checks before a run, in the order of the clause.</summary>
    /// <param name="facts">What the rules look at.</param>
    /// <param name="gate">The rules, judged.</param>
    public static IReadOnlyList<PreWeldCheck> Of(
        WeldGateFacts facts,
        IReadOnlyList<RuleVerdict> gate
    )
    {
        ArgumentNullException.ThrowIfNull(facts);
        ArgumentNullException.ThrowIfNull(gate);
        var details = facts.Revision?.Content.DetailsOrNone ?? ProcedureDetails.None;
        return
        [
            ByRule(PreWeldItem.OperatorCertificate, "F4", gate),
            ByRule(PreWeldItem.Procedure, "F2", gate),
            ByRule(PreWeldItem.ParentMaterial, "F7", gate),
            details.CleaningLimit is not null
                ? ByRule(PreWeldItem.JointPreparation, "F8", gate)
                : ByWelder(
                    PreWeldItem.JointPreparation,
                    "Edges are prepared and cleaned as the procedure says",
                    details,
                    ProcedureField.EdgePreparation,
                    ProcedureField.CleaningBefore
                ),
            ByWelder(
                PreWeldItem.FitUp,
                "The parts fit, and are held and tacked as the procedure says",
                details,
                ProcedureField.Fixture,
                ProcedureField.ClampType,
                ProcedureField.ClampForce,
                ProcedureField.TackWelds
            ),
            ByWelder(PreWeldItem.Parameters, $"The machine is set: {SetPoints(facts)}", details),
            Preheat(details),
        ];
    }

    /// <summary>The refusals for what the welder has not confirmed.</summary>
    /// <param name="checks">Checks of the run.</param>
    /// <param name="confirmed">What the welder confirmed.</param>
    public static IEnumerable<Refusal> Missing(
        IEnumerable<PreWeldCheck> checks,
        IReadOnlyCollection<PreWeldItem> confirmed
    ) =>
        checks
            .Where(c => c.NeedsWelder && !confirmed.Contains(c.Item))
            .Select(c => new Refusal(
                "pre-weld",
                $"Look at it and confirm before you weld: {c.Title.ToLowerInvariant()}.",
                c.Item.ToString(),
                Source
            ));

    private static PreWeldCheck Preheat(ProcedureDetails details) =>
        details.Of(ProcedureField.Preheat) is null && details.Of(ProcedureField.Interpass) is null
            ? new(PreWeldItem.Preheat, "F2", "The procedure asks for none.")
            : ByWelder(
                PreWeldItem.Preheat,
                "The work has the temperature that the procedure says",
                details,
                ProcedureField.Preheat,
                ProcedureField.Interpass
            );

    private static PreWeldCheck ByRule(
        PreWeldItem item,
        string ruleId,
        IReadOnlyList<RuleVerdict> gate
    ) => new(item, ruleId, gate.Single(v => v.RuleId == ruleId).Reason);

    private static PreWeldCheck ByWelder(
        PreWeldItem item,
        string statement,
        ProcedureDetails details,
        params IReadOnlyList<ProcedureField> fields
    )
    {
        var asked = string.Join(
            "; ",
            fields.Select(details.Of).OfType<Particular>().Select(p => p.Text.TrimEnd('.'))
        );
        return new(item, null, asked.Length == 0 ? $"{statement}." : $"{statement}: {asked}.");
    }

    private static string SetPoints(WeldGateFacts facts) =>
        string.Join(
            ", ",
            (facts.Revision?.Content.Windows ?? []).Select(w =>
                FormattableString.Invariant(
                    $"{ParameterNames.Of(w.Parameter).ToLowerInvariant()} {w.SetPoint} {w.Unit}"
                )
            )
        );
}
