using WeldTrace.Domain.Findings;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Findings.ShowFinding;

public sealed class DecideFindingForm
{
    public string? Decision { get; set; }

    public string? Reason { get; set; }

    /// <summary>Procedure to repair by; for a repair only.</summary>
    public Guid? Procedure { get; set; }

    /// <summary>Joint and pass to weld along, for instance <c>J1/2</c>; for a repair only.</summary>
    public string? Place { get; set; }

    public string? Start { get; set; }

    public string? End { get; set; }

    public string? Password { get; set; }

    /// <summary>How a pass stands in the list of places.</summary>
    public static string PlaceOf(string jointCode, int passNumber) =>
        FormattableString.Invariant($"{jointCode}/{passNumber}");

    /// <summary>Where the repair is welded; null when no pass of the design was chosen.</summary>
    public RepairPlace? ReadPlace(DesignContent design, Entries entries)
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(entries);
        var chosen = design
            .Joints.SelectMany(j => j.Passes.Select(p => (j.Code, p.Number)))
            .FirstOrDefault(p => PlaceOf(p.Code, p.Number) == Place);
        if (chosen.Code is null)
        {
            return null;
        }

        var (start, end) = (
            entries.Number(Start, "°", "Angle at which the repair begins", nameof(Start)),
            entries.Number(End, "°", "Angle at which it ends", nameof(End))
        );
        return entries.Refusals.Count > 0
            ? null
            : new(
                chosen.Code,
                chosen.Number,
                Angle.FromDegrees(start.InUnit()),
                Angle.FromDegrees(end.InUnit())
            );
    }
}

public sealed class CloseFindingForm
{
    public string? Note { get; set; }

    public string? Password { get; set; }
}
