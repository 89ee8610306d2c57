using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;

namespace WeldTrace.Domain.Material;

/// <summary>What is known about the material of a vessel.</summary>
/// <param name="Lots">Lots of its components.</param>
/// <param name="HeatTreatments">Treatments of its components and of itself.</param>
/// <param name="SiteDocument">Weakest inspection document that the site permits; null when it asks for none.</param>
public sealed record MaterialFacts(
    IReadOnlyList<MaterialLot> Lots,
    IReadOnlyList<HeatTreatment> HeatTreatments,
    InspectionDocumentType? SiteDocument
);

/// <summary>Floor rule F7: the lots match design and procedure, and their inspection documents are on file.</summary>
public static class MaterialRules
{
    private const string Source =
        "ISO 25239-5:2020 4.11, 4.12.2; NASA-STD-5006A GWR 28, 29; EN 10204:2004 (second-hand)";

    /// <summary>Judges the rule.</summary>
    /// <param name="vessel">Vessel.</param>
    /// <param name="design">Its design.</param>
    /// <param name="procedure">Content of the procedure to be welded to; null when there is none.</param>
    /// <param name="facts">What is known about its material.</param>
    public static RuleVerdict ForWelding(
        Vessel vessel,
        DesignContent design,
        ProcedureContent? procedure,
        MaterialFacts facts
    )
    {
        ArgumentNullException.ThrowIfNull(vessel);
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(facts);
        var required = InspectionDocuments.Stronger(design.RequiredDocument, facts.SiteDocument);
        List<string> against =
        [
            .. vessel.Components.SelectMany(c =>
                facts.Lots.FirstOrDefault(l => l.Id == c.MaterialLotId) is { } lot
                    ? AgainstLot(lot, design, procedure, required)
                    : [$"The lot of {c.Serial} is not on file."]
            ),
            .. facts
                .HeatTreatments.Where(t => !t.IsKept)
                .Select(t => $"Heat treatment {t.Number}: {t.Verdict}"),
        ];
        return new(
            "F7",
            "Material and its documents",
            against.Count == 0 ? RuleStanding.Holds : RuleStanding.Forbids,
            against.Count == 0
                ? Holds(vessel, design, facts)
                : string.Join(" ", against.Distinct()),
            Source
        );
    }

    /// <summary>Everything that speaks against a lot for a design; nothing when it suits.</summary>
    /// <param name="lot">Lot.</param>
    /// <param name="design">Design of the vessel.</param>
    /// <param name="procedure">Content of the procedure; null to look at the design only.</param>
    /// <param name="required">Weakest inspection document permitted; null for none.</param>
    public static IEnumerable<string> AgainstLot(
        MaterialLot lot,
        DesignContent design,
        ProcedureContent? procedure,
        InspectionDocumentType? required
    )
    {
        ArgumentNullException.ThrowIfNull(lot);
        ArgumentNullException.ThrowIfNull(design);
        if (!Is(lot, design.Alloy, design.Temper))
        {
            yield return $"Lot {lot.Number} is {lot.Alloy}-{lot.Temper}, the design asks for {design.Alloy}-{design.Temper}; take another component.";
        }

        if (procedure is not null && !Suits(lot, procedure))
        {
            yield return $"Lot {lot.Number} is {lot.Alloy}-{lot.Temper}, the procedure is for {Parents(procedure)}.";
        }

        if (required is { } weakest)
        {
            foreach (var missing in AgainstDocument(lot, weakest))
            {
                yield return missing;
            }
        }

        if (lot.Results is { Misses: true } results)
        {
            yield return $"Lot {lot.Number} misses a minimum of {results.Minima?.Source}: {string.Join(" ", results.Lines.Where(l => l.Verdict is Engineering.Conformity.Verdict.Fail or Engineering.Conformity.Verdict.Undecided).Select(l => $"{l.Name}: {l.Sentence}"))}";
        }
    }

    private static IEnumerable<string> AgainstDocument(
        MaterialLot lot,
        InspectionDocumentType weakest
    )
    {
        var word = InspectionDocuments.Word(weakest);
        switch (lot.Document)
        {
            case null:
                yield return $"Lot {lot.Number} has no inspection document on file, {word} is asked for; file it on the lot's page.";
                break;
            case { Type: var type } when type < weakest:
                yield return $"Lot {lot.Number} has an inspection document {InspectionDocuments.Word(type)}, {word} is asked for; take material that has one.";
                break;
            case { FileSha256: null }:
                yield return $"The inspection document of lot {lot.Number} is not scanned in; hand it in on the lot's page.";
                break;
            case { Type: var type }
                when InspectionDocuments.IsSpecific(type) && lot.Results is null:
                yield return $"The results of the inspection document of lot {lot.Number} are not entered; enter them on the lot's page.";
                break;
            default:
                break;
        }
    }

    private static bool Suits(MaterialLot lot, ProcedureContent procedure) =>
        Is(lot, procedure.Alloy, procedure.Temper)
        || (procedure.DetailsOrNone.Other is { } other && Is(lot, other.Alloy, other.Temper));

    private static string Parents(ProcedureContent procedure) =>
        procedure.DetailsOrNone.Other is { } other
            ? $"{procedure.Alloy}-{procedure.Temper} to {other.Alloy}-{other.Temper}"
            : $"{procedure.Alloy}-{procedure.Temper}";

    private static bool Is(MaterialLot lot, string alloy, string temper) =>
        lot.Alloy.Equals(alloy.Trim(), StringComparison.OrdinalIgnoreCase)
        && lot.Temper.Equals(temper.Trim(), StringComparison.OrdinalIgnoreCase);

    private static string Holds(Vessel vessel, DesignContent design, MaterialFacts facts)
    {
        var lots = string.Join(
            ", ",
            vessel.Components.Select(c => c.MaterialLotNumber).Distinct().Order()
        );
        var unchecked_ = facts
            .Lots.Where(l => l.Results is { Minima: { WasChecked: false } })
            .Select(l => l.Results!.Minima!.Label)
            .Distinct()
            .ToList();
        var mark =
            unchecked_.Count == 0
                ? ""
                : $" Minima not checked against the site's own copy: {string.Join(", ", unchecked_)}.";
        return $"Lots {lots} are {design.Alloy}-{design.Temper} as asked for, with their documents on file.{mark}";
    }
}
