using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Domain.Welding;

namespace WeldTrace.Domain.Lots;

/// <summary>Floor rule F20, before a weld and before the acceptance of a vessel.</summary>
public static class LotRules
{
    /// <summary>The vessel belongs to a lot whose samples are chosen, and is welded as the lot says; null when its design asks for no samples.</summary>
    /// <param name="facts">What the rules look at.</param>
    public static RuleVerdict? ForWelding(WeldGateFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        if (facts.Design.Content.Samples is null)
        {
            return null;
        }

        var against = Against(facts);
        return new(
            "F20",
            "Production lot and its samples",
            against is null ? RuleStanding.Holds : RuleStanding.Forbids,
            against
                ?? $"The samples of lot {facts.Lot!.Number} are chosen, and the run is as the lot says.",
            ProductionLot.Source
        );
    }

    /// <summary>Why a vessel can't be accepted for its lot; null when nothing speaks against it.</summary>
    /// <param name="vessel">Vessel.</param>
    /// <param name="design">Its design.</param>
    /// <param name="lot">Its lot; null when it is in none.</param>
    /// <param name="findings">Findings of the vessel.</param>
    public static Refusal? AgainstAcceptance(
        Vessel vessel,
        VesselDesign design,
        ProductionLot? lot,
        IReadOnlyList<Finding> findings
    )
    {
        ArgumentNullException.ThrowIfNull(vessel);
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(findings);
        if (design.Content.Samples is null && lot is null)
        {
            return null;
        }

        var against =
            vessel.Sample is { } duty
                ? $"{vessel.Serial} is a sample of lot {duty.LotNumber} and is never accepted."
            : lot is null
                ? $"{vessel.Serial} belongs to no production lot, and {design.Label} asks for destructive samples of each lot."
            : lot.State == LotState.Failed && IsLetThrough(findings) ? null
            : lot.State != LotState.Accepted
                ? $"Lot {lot.Number}: {ProductionLot.StateWord(lot.State)}. A vessel is accepted when its lot is."
            : null;
        return against is null ? null : new Refusal("F20", against, null, ProductionLot.Source);
    }

    private static string? Against(WeldGateFacts facts) =>
        facts.Lot switch
        {
            null =>
                $"{facts.Vessel.Serial} belongs to no production lot, and {facts.Design.Label} asks for samples of each lot; form the lot and choose its samples before you weld.",
            { Samples.Count: 0 } lot =>
                $"The samples of lot {lot.Number} are not chosen; they are recorded before welding starts.",
            { } lot when facts.Runs.Count == 0 && OutsideWindow(lot, facts.Today) =>
                FormattableString.Invariant(
                    $"Lot {lot.Number} is welded from {lot.Rule.From:yyyy-MM-dd} to {lot.Rule.Until:yyyy-MM-dd}; today is outside. Form another lot, or have the rule waived."
                ),
            // A repair has its own procedure, which its decision names.
            _ when facts.Repair is not null => null,
            { } lot when facts.Revision is { } revision && revision.Id != lot.Rule.Procedure.Id =>
                $"Lot {lot.Number} is welded to {lot.Rule.Procedure.Label}, not to {revision.Label}; form another lot, or have the rule waived.",
            { Rule.Machine: { } machine } lot
                when facts.Machine is { } chosen && chosen.Id != machine.Id =>
                $"Lot {lot.Number} is welded on {machine.Label}, not on {chosen.Name}; choose that machine.",
            { } lot when facts.ToolDesign is { } design && design.Id != lot.Rule.ToolDesign.Id =>
                $"Lot {lot.Number} is welded with tools of {lot.Rule.ToolDesign.Label}, not of {design.Label}; choose such a tool.",
            _ => null,
        };

    private static bool OutsideWindow(ProductionLot lot, DateOnly today) =>
        today < lot.Rule.From || today > lot.Rule.Until;

    // A failed sample is decided on each vessel; use as is, closed, lets that one through.
    private static bool IsLetThrough(IReadOnlyList<Finding> findings)
    {
        var fromLot = findings.Where(f => f.Origin == FindingOrigin.LotSample).ToList();
        return fromLot.Count > 0
            && fromLot.All(f =>
                f.State == FindingState.Closed && f.Disposition?.Kind == DispositionKind.UseAsIs
            );
    }
}
