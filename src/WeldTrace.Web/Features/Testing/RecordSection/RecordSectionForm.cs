using WeldTrace.Domain.Sectioning;
using WeldTrace.Domain.Vessels;
using WeldTrace.Engineering.Paths;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Testing.RecordSection;

/// <summary>What was typed for a section.</summary>
public sealed class RecordSectionForm
{
    public Guid Id { get; set; }

    public string? PassNumber { get; set; }

    public string? Angle { get; set; }

    public string? Etchant { get; set; }

    public string? Magnification { get; set; }

    public string? Instrument { get; set; }

    public string? Imperfection { get; set; }

    public string? Size { get; set; }

    public string? SizeUncertainty { get; set; }

    public string? Limit { get; set; }

    public string? LimitSource { get; set; }

    public string? Side { get; set; }

    public string? DistanceFromFace { get; set; }

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
        );
    }

    public SectionMeasurement ReadMeasurement(Entries entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        var found = entries.Choice<Imperfection>(
            Imperfection,
            "Imperfection",
            nameof(Imperfection)
        );
        var isFound = found != Domain.Sectioning.Imperfection.None;
        return new SectionMeasurement(
            found,
            isFound
                ? entries.Number(Size, "mm", "Size", nameof(Size))
                : entries.OptionalNumber(Size, "mm", "Size", nameof(Size)),
            isFound
                ? entries.Number(
                    SizeUncertainty,
                    "mm",
                    "Expanded uncertainty of the size",
                    nameof(SizeUncertainty)
                )
                : null,
            entries.OptionalNumber(Limit, "mm", "Limit", nameof(Limit)),
            LimitSource ?? "",
            string.IsNullOrEmpty(Side)
                ? null
                : entries.Choice<WeldSide>(Side, "Side", nameof(Side)),
            entries.OptionalNumber(
                DistanceFromFace,
                "mm",
                "Distance from the face",
                nameof(DistanceFromFace)
            )
        );
    }
}
