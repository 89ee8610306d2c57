using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Sectioning;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Testing.TakeInSection;

/// <summary>How closely a section is looked at.</summary>
public enum SectionScale
{
    /// <summary>By eye or loupe.</summary>
    Macroscopic,

    /// <summary>By microscope.</summary>
    Microscopic,
}

/// <summary>What was typed for a section.</summary>
public sealed class TakeInSectionForm
{
    public Guid Id { get; set; }

    public string? Specimen { get; set; }

    public string? PassNumber { get; set; }

    public string? Angle { get; set; }

    public string? Plane { get; set; }

    public string? Scale { get; set; } = nameof(SectionScale.Macroscopic);

    public string? Etchant { get; set; }

    public string? Magnification { get; set; }

    public string? Method { get; set; }

    public string? MethodEdition { get; set; }

    public string? WrittenProcedure { get; set; }

    public string? Limits { get; set; }

    public string? Instrument { get; set; }

    public IFormFile? Photograph { get; set; }

    public string? Remark { get; set; }

    public SectionCut ReadCut(RouteStep step, Entries entries)
    {
        ArgumentNullException.ThrowIfNull(step);
        ArgumentNullException.ThrowIfNull(entries);
        return new SectionCut(
            step.JointCode ?? "",
            entries.OptionalWhole(PassNumber, "passes", "Pass", nameof(PassNumber)),
            Engineering.Quantities.Angle.FromDegrees(
                entries.Number(Angle, "°", "Angle of the cut", nameof(Angle)).InUnit()
            ),
            Etchant ?? "",
            Magnification ?? ""
        )
        {
            Specimen = Specimen?.Trim() ?? "",
            Plane = Plane?.Trim() ?? "",
            IsMicroscopic =
                entries.Choice<SectionScale>(Scale, "Section", nameof(Scale))
                == SectionScale.Microscopic,
        };
    }

    public SectionStandards ReadStandards(LimitTable table, Joint? joint)
    {
        ArgumentNullException.ThrowIfNull(table);
        return new SectionStandards(
            Method?.Trim() ?? "",
            MethodEdition?.Trim() ?? "",
            WrittenProcedure?.Trim() ?? "",
            table.Reference,
            joint?.Thickness ?? Engineering.Quantities.Length.Zero
        );
    }
}
