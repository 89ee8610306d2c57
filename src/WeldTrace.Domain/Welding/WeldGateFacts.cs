using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Concessions;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Lots;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Preparation;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.ProductionTesting;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Welding;

/// <summary>Everything that the rules before a weld run look at.</summary>
/// <param name="Vessel">Vessel to be welded.</param>
/// <param name="Step">Step about to be begun.</param>
/// <param name="Design">Design of the vessel.</param>
/// <param name="Findings">Findings of the vessel.</param>
/// <param name="Runs">Earlier runs on the vessel.</param>
/// <param name="Revision">Procedure revision chosen; null when none is released.</param>
/// <param name="Tool">Tool chosen; null when none is.</param>
public sealed record WeldGateFacts(
    Vessel Vessel,
    RouteStep Step,
    VesselDesign Design,
    IReadOnlyList<Finding> Findings,
    IReadOnlyList<WeldRun> Runs,
    ProcedureRevision? Revision,
    Tool? Tool
)
{
    /// <summary>Design of the tool chosen; null when none is.</summary>
    public required ToolDesign? ToolDesign { get; init; }

    /// <summary>Machine chosen; null when none is.</summary>
    public required Machine? Machine { get; init; }

    /// <summary>The register's instruments among those that the procedure names.</summary>
    public required IReadOnlyList<Instrument> Instruments { get; init; }

    /// <summary>Who is about to weld.</summary>
    public required Actor Welder { get; init; }

    /// <summary>Certificates of that person.</summary>
    public required IReadOnlyList<Certificate> Certificates { get; init; }

    /// <summary>Material of the vessel.</summary>
    public required MaterialFacts Material { get; init; }

    /// <summary>What was done to its joints before welding.</summary>
    public required PreparationFacts Preparation { get; init; }

    /// <summary>Concessions about the vessel, oldest first.</summary>
    public required IReadOnlyList<Concession> Concessions { get; init; }

    /// <summary>What happened on the machine since its last production test; null when the design asks for none.</summary>
    public ProductionSince? Production { get; init; }

    /// <summary>Production lot of the vessel; null when it is in none.</summary>
    public ProductionLot? Lot { get; init; }

    /// <summary>UTC instant at which the run would begin.</summary>
    public required DateTimeOffset Now { get; init; }

    /// <summary>Day at the site.</summary>
    public required DateOnly Today { get; init; }

    /// <summary>Joint of the step.</summary>
    public Joint Joint =>
        Design.Content.Joint(Step.JointCode)
        ?? throw new InvalidOperationException($"Step {Step.Sequence} names no joint.");

    /// <summary>Pass of the step.</summary>
    public PassPlan Pass =>
        Joint.Pass(Step.PassNumber ?? 0)
        ?? throw new InvalidOperationException($"Step {Step.Sequence} names no pass.");

    /// <summary>The finding whose repair is to be welded; null for the step itself.</summary>
    public Finding? Repair { get; init; }

    /// <summary>Planned path: of the pass, overlap included, or of the repair.</summary>
    public Length PlannedPath => Repair?.PlannedRepair?.Place?.PathOn(Pass) ?? Pass.Path;
}
