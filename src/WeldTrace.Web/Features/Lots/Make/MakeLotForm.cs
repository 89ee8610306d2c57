using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.VesselDesigns;

namespace WeldTrace.Web.Features.Lots.Make;

public sealed class MakeLotForm
{
    public string? Number { get; set; }

    public Guid? DesignId { get; set; }

    public Guid? ProcedureId { get; set; }

    public Guid? MachineId { get; set; }

    public Guid? MaterialLotId { get; set; }

    public DateOnly? From { get; set; }

    public DateOnly? Until { get; set; }

    /// <summary>Serials, parted by spaces, commas or lines; empty for every vessel that fits.</summary>
    public string? Vessels { get; set; }
}

/// <summary>What the form offers.</summary>
public sealed record MakeLotChoices(
    IReadOnlyList<VesselDesign> Designs,
    IReadOnlyList<ProcedureRevision> Procedures,
    IReadOnlyList<Machine> Machines,
    IReadOnlyList<MaterialLot> Lots
);
