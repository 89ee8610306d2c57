using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Paths;

namespace WeldTrace.Domain.Sectioning;

/// <summary>The one size that was typed for a section before sizes were measured on its picture; read only.</summary>
/// <param name="Imperfection">What was found.</param>
/// <param name="Size">Its size in mm; null when nothing was found.</param>
/// <param name="SizeUncertainty">Expanded uncertainty of the size, k = 2, in mm.</param>
/// <param name="Limit">Greatest permitted size in mm, from the source named; null when the design permits none.</param>
/// <param name="LimitSource">Standard or design specification with edition and clause.</param>
/// <param name="Side">Side of the weld; null when it lies in the middle.</param>
/// <param name="DistanceFromFace">Distance from the weld face in mm; null when not measured.</param>
public sealed record SectionMeasurement(
    Imperfection Imperfection,
    Measured? Size,
    Measured? SizeUncertainty,
    Measured? Limit,
    string LimitSource,
    WeldSide? Side,
    Measured? DistanceFromFace
);
