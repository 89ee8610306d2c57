using WeldTrace.Domain.Qualification;
using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.Joints;
using WeldTrace.Engineering.Paths;
using Measured = WeldTrace.Domain.Records.Measured;

namespace WeldTrace.Domain.Laboratory;

/// <summary>What was tested: a sample of a vessel, or of a lot.</summary>
/// <param name="VesselSerial">Serial of the vessel; null when the sample stands for a lot.</param>
/// <param name="ProductionLot">Production lot; that of the vessel when there is one.</param>
/// <param name="JointCode">Joint.</param>
/// <param name="Sample">Mark of the sample or test piece.</param>
/// <param name="Place">Where on the weld the specimens were taken, exactly.</param>
/// <param name="Procedure">Welding procedure with its revision.</param>
/// <param name="WeldedOn">Day of welding; alloys of the 7xxx series harden on with it.</param>
public sealed record LaboratorySample(
    string? VesselSerial,
    string ProductionLot,
    string JointCode,
    string Sample,
    string Place,
    string Procedure,
    DateOnly WeldedOn
);

/// <summary>A tensile specimen.</summary>
/// <param name="Mark">Its mark.</param>
/// <param name="Entry">What was measured.</param>
/// <param name="Side">Side of the weld on which it broke; null for the middle or the parent material.</param>
public sealed record TensileRow(string Mark, TensileEntry Entry, WeldSide? Side);

/// <summary>A tensile test of one or more specimens.</summary>
/// <param name="Required">Least strength of each specimen.</param>
/// <param name="Parent">Ultimate strength of the parent, in MPa.</param>
/// <param name="Reference">What that strength is.</param>
/// <param name="ForceUncertainty">Standard uncertainty of the force, in kN.</param>
/// <param name="SizeUncertainty">Standard uncertainty of width and thickness, in mm.</param>
/// <param name="Specimens">Specimens.</param>
public sealed record TensileSeries(
    TensileRequirement Required,
    Measured Parent,
    ParentReference Reference,
    Measured ForceUncertainty,
    Measured SizeUncertainty,
    IReadOnlyList<TensileRow> Specimens
);

/// <summary>A bend specimen.</summary>
/// <param name="Mark">Its mark.</param>
/// <param name="Width">Width, in mm.</param>
/// <param name="Thickness">Thickness, in mm.</param>
/// <param name="Entry">What was measured.</param>
/// <param name="Seen">Imperfections seen, with their lengths; none when there were none.</param>
public sealed record BendRow(
    string Mark,
    Measured Width,
    Measured Thickness,
    BendEntry Entry,
    string Seen
);

/// <summary>A bend test of one or more specimens.</summary>
/// <param name="Required">What is asked.</param>
/// <param name="RollerGap">Distance of the rollers, in mm.</param>
/// <param name="Specimens">Specimens.</param>
public sealed record BendSeries(
    BendRequirement Required,
    Measured RollerGap,
    IReadOnlyList<BendRow> Specimens
);

/// <summary>An indentation.</summary>
/// <param name="Position">Distance from the weld centre in mm: below zero on the advancing side, above on the retreating side.</param>
/// <param name="Hardness">Hardness HV.</param>
public sealed record HardnessRow(Measured Position, Measured Hardness);

/// <summary>A hardness traverse across the weld.</summary>
/// <param name="Scale">Scale, for instance <c>HV 10</c>.</param>
/// <param name="DwellSeconds">Dwell, in s.</param>
/// <param name="Depth">Distance of the row from the surface, in mm.</param>
/// <param name="Parent">Hardness of the parent HV.</param>
/// <param name="AtLeast">Least hardness permitted HV; null when the standard asks for the values only.</param>
/// <param name="Block">Reference block by which the machine was checked.</param>
/// <param name="Points">Indentations in order of position.</param>
public sealed record HardnessSeries(
    string Scale,
    Measured DwellSeconds,
    Measured Depth,
    Measured Parent,
    Measured? AtLeast,
    string Block,
    IReadOnlyList<HardnessRow> Points
);

/// <summary>What was measured; the one that fits the kind of test is filled.</summary>
/// <param name="Tensile">Tensile test.</param>
/// <param name="Bend">Bend test.</param>
/// <param name="Hardness">Hardness traverse.</param>
public sealed record LaboratoryEntry(
    TensileSeries? Tensile = null,
    BendSeries? Bend = null,
    HardnessSeries? Hardness = null
);

/// <summary>The verdict of one specimen, or a figure of all of them.</summary>
/// <param name="Name">Mark of the specimen, or name of the figure.</param>
/// <param name="Value">Value with its unit.</param>
/// <param name="Verdict">Verdict; null for a figure without a limit.</param>
/// <param name="Sentence">The verdict in words; empty for a figure.</param>
public sealed record LaboratoryLine(string Name, string Value, Verdict? Verdict, string Sentence);
