using WeldTrace.Domain.Limits;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Sectioning;

/// <summary>Where and how the section was cut and made visible.</summary>
/// <param name="JointCode">Joint.</param>
/// <param name="PassNumber">Pass; null when all passes show.</param>
/// <param name="Angle">Angle of the cut from the start of the pass.</param>
/// <param name="Etchant">Etchant and time.</param>
/// <param name="Magnification">Magnification as on the photograph, or the scale's length.</param>
public sealed record SectionCut(
    string JointCode,
    int? PassNumber,
    Angle Angle,
    string Etchant,
    string Magnification
)
{
    /// <summary>Mark of the specimen; null in sections recorded before it was asked for.</summary>
    public string? Specimen { get; init; }

    /// <summary>Plane of the cut, for instance across the weld; null in sections recorded before it was asked for.</summary>
    public string? Plane { get; init; }

    /// <summary>Whether it is a microscopic section; null in sections recorded before it was asked for.</summary>
    public bool? IsMicroscopic { get; init; }
}

/// <summary>By what a section is examined and judged. Method and acceptance are apart: method standards set no limits.</summary>
/// <param name="Method">Method standard.</param>
/// <param name="MethodEdition">Its edition.</param>
/// <param name="WrittenProcedure">Number of the written procedure; may be empty.</param>
/// <param name="Limits">Edition of the imperfection limits; the table is that of one level.</param>
/// <param name="Thickness">Thickness of the joint, which the limits follow from.</param>
public sealed record SectionStandards(
    string Method,
    string MethodEdition,
    string WrittenProcedure,
    LimitReference Limits,
    Length Thickness
);
