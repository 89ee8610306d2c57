using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;

namespace WeldTrace.Domain.Lots;

/// <summary>
/// Vessels that are made alike, so that what a few of them show when they are destroyed holds for the others: gathered and sampled
/// before they are welded, decided by their samples.
/// </summary>
public sealed partial class ProductionLot : Record
{
    /// <summary>Longest number; the same as that of the lot written on a vessel.</summary>
    public const int LongestNumber = Vessel.LongestText;

    /// <summary>Longest reason.</summary>
    public const int LongestText = 400;

    /// <summary>Rule or standard behind sampling by lots.</summary>
    public const string Source =
        "Rule of the floor F20: destructive samples of the lot decide (sampling by lot as in NASA-STD-5006A GWR 47-50, from the public text)";

    private const int MostVessels = 500;

    private ProductionLot(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "production-lot";

    /// <inheritdoc/>
    public override string Label => Number;

    /// <inheritdoc/>
    public override IReadOnlyList<Guid> ConcernedVessels => [.. Vessels.Select(v => v.Id)];

    /// <inheritdoc/>
    public override bool IsSealed => State == LotState.Accepted;

    /// <summary>Number of the lot; unique at the site.</summary>
    public string Number { get; private set; } = "";

    /// <summary>Design revision of its vessels.</summary>
    public Guid DesignId { get; private set; }

    /// <summary>Number and revision of that design.</summary>
    public string DesignLabel { get; private set; } = "";

    /// <summary>What its vessels have in common.</summary>
    public LotRule Rule { get; private set; } = null!;

    /// <summary>The samples that its design asked for when it was formed.</summary>
    public SamplePlan Plan { get; private set; } = null!;

    /// <summary>State.</summary>
    public LotState State { get; private set; }

    /// <summary>Its vessels, by serial.</summary>
    public IReadOnlyList<RecordName> Vessels { get; private set; } = [];

    /// <summary>The vessels that are sacrificed; empty until they are chosen.</summary>
    public IReadOnlyList<LotSample> Samples { get; private set; } = [];

    /// <summary>Printed name of whoever chose the samples; null until then.</summary>
    public string? SampledBy { get; private set; }

    /// <summary>UTC instant at which the samples were chosen; null until then.</summary>
    public DateTimeOffset? SampledAt { get; private set; }

    /// <summary>What the tests of the samples showed, oldest first.</summary>
    public IReadOnlyList<SampleResult> Results { get; private set; } = [];

    /// <summary>What laboratory tests showed that stand for the lot, oldest first; null when there was none.</summary>
    public IReadOnlyList<LaboratoryResult>? Laboratory { get; private set; }

    /// <summary>The acceptance; null until it is signed.</summary>
    public LotAcceptance? Acceptance { get; private set; }

    /// <summary>Forms a lot of planned vessels.</summary>
    /// <param name="number">Number; 1 to 40 characters.</param>
    /// <param name="design">Released design that asks for samples.</param>
    /// <param name="rule">What the vessels have in common.</param>
    /// <param name="vessels">Its vessels; none of them welded on.</param>
    /// <param name="actor">Engineer or quality manager.</param>
    /// <param name="at">UTC instant.</param>
    public static Outcome<ProductionLot> Form(
        string number,
        VesselDesign design,
        LotRule rule,
        IReadOnlyList<Vessel> vessels,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(rule);
        ArgumentNullException.ThrowIfNull(vessels);
        var checks = new Checks()
            .Role(actor, Role.Engineer, Role.QualityManager)
            .Text(number, LongestNumber, "Give the number of the lot", nameof(Number))
            .That(
                design.Content.Samples is not null,
                "design",
                $"{design.Label} asks for no destructive samples, so its vessels form no lot. Add them in a new revision of the design.",
                nameof(DesignId)
            )
            .That(
                design.State != DesignState.Draft,
                "design",
                $"{design.Label} is a draft; release it first.",
                nameof(DesignId)
            )
            .That(
                rule.From <= rule.Until,
                "window",
                "The last day of welding comes before the first; turn them round.",
                nameof(LotRule.Until)
            );
        CheckVessels(checks, design.Id, design.Content.Samples, rule, vessels);
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var lot = new ProductionLot(Guid.CreateVersion7(at))
        {
            Number = number.Trim(),
            DesignId = design.Id,
            DesignLabel = design.Label,
            Rule = rule,
            Plan = design.Content.Samples!,
            Vessels =
            [
                .. vessels.OrderBy(v => v.Serial, StringComparer.Ordinal).Select(RecordName.Of),
            ],
        };
        lot.Note(actor, at, "production lot formed");
        foreach (var vessel in vessels)
        {
            vessel.GatherInto(lot, actor, at);
        }

        return lot;
    }

    /// <summary>The sample that a vessel is; null when it is none.</summary>
    public LotSample? SampleOf(Guid vesselId) =>
        Samples.FirstOrDefault(s => s.VesselId == vesselId);

    /// <summary>The newest result of a sample; null while there is none.</summary>
    public SampleResult? ResultOf(LotSample sample)
    {
        ArgumentNullException.ThrowIfNull(sample);
        return Results.LastOrDefault(r => r.VesselId == sample.VesselId && r.Kind == sample.Kind);
    }

    /// <summary>The word for a state, as shown.</summary>
    public static string StateWord(LotState state) =>
        state switch
        {
            LotState.Gathering => "samples not chosen",
            LotState.Sampling => "awaits its samples",
            LotState.Failed => "a sample failed",
            LotState.Accepted => "accepted",
            _ => throw new ArgumentOutOfRangeException(nameof(state), state, "Unknown state."),
        };

    private static void CheckVessels(
        Checks checks,
        Guid designId,
        SamplePlan? plan,
        LotRule rule,
        IReadOnlyList<Vessel> vessels
    )
    {
        checks.That(
            vessels.Count > (plan?.Count ?? 0) && vessels.Count <= MostVessels,
            "count",
            $"Choose more vessels than the {plan?.Count ?? 0} that are sacrificed, at most {MostVessels}.",
            nameof(Vessels)
        );
        foreach (var vessel in vessels)
        {
            checks.That(
                Against(vessel, designId, rule) is not { } against,
                "vessel",
                $"{vessel.Serial} {Against(vessel, designId, rule)}",
                nameof(Vessels)
            );
        }
    }

    private static string? Against(Vessel vessel, Guid designId, LotRule rule) =>
        vessel.DesignId != designId ? "is made to another design; leave it out."
        : vessel.LotId is not null ? $"belongs to lot {vessel.ProductionLot} already; leave it out."
        : vessel.IsFinal ? $"is {Vessel.StateWord(vessel.State)}; leave it out."
        : vessel.HasWeldingBegun
            ? "is welded on already; a lot is formed, and its samples chosen, before welding starts. Leave it out."
        : rule.MaterialLot is { } material
        && vessel.Components.All(c => c.MaterialLotId != material.Id)
            ? $"has no component of material lot {material.Label}; leave it out, or let the lots differ."
        : null;
}
