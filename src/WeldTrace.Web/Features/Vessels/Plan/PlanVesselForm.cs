using WeldTrace.Domain.Material;
using WeldTrace.Domain.VesselDesigns;

namespace WeldTrace.Web.Features.Vessels.Plan;

public sealed class PlanVesselForm
{
    public const int ComponentRows = 6;

    public string? Serial { get; set; }

    public Guid DesignId { get; set; }

    public string? ProductionLot { get; set; }

    // A form sent without any of them arrives as null.
    public List<PlanComponentForm> Components
    {
        get;
        set => field = value ?? [];
    } = [];
}

public sealed class PlanComponentForm
{
    /// <summary>What it is on the vessel; left empty, what it was entered as.</summary>
    public string? Name { get; set; }

    /// <summary>Serial of a component, typed, chosen or scanned.</summary>
    public string? Serial { get; set; }

    public bool IsEmpty => string.IsNullOrWhiteSpace(Name) && string.IsNullOrWhiteSpace(Serial);
}

/// <summary>What the form offers.</summary>
public sealed record PlanVesselChoices(
    IReadOnlyList<VesselDesign> Designs,
    IReadOnlyList<CutComponent> Free
);
