using WeldTrace.Domain.Material;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Material.Lots;

/// <summary>What was typed about a lot's inspection document and its results.</summary>
public class LotDocumentForm
{
    public string? Type { get; set; }

    public string? ProductStandard { get; set; }

    public IFormFile? File { get; set; }

    public string? TensileStrength { get; set; }

    public string? ProofStrength { get; set; }

    public string? Elongation { get; set; }

    public string? Thickness { get; set; }

    public Guid? Minima { get; set; }

    /// <summary>Whether anything about the document was typed.</summary>
    public bool HasDocument => !string.IsNullOrEmpty(Type);

    /// <summary>The results; null when none was typed.</summary>
    public MaterialValues? Read(Entries entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        var values = new MaterialValues(
            entries.OptionalNumber(TensileStrength, "MPa", "Rm", nameof(TensileStrength)),
            entries.OptionalNumber(ProofStrength, "MPa", "Rp0.2", nameof(ProofStrength)),
            entries.OptionalNumber(Elongation, "%", "A", nameof(Elongation)),
            entries.OptionalNumber(Thickness, "mm", "Thickness", nameof(Thickness))
        );
        return values == new MaterialValues(null, null, null, null) ? null : values;
    }
}
