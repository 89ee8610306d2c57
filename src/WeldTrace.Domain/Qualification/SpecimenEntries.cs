using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Joints;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Qualification;

/// <summary>A flat tensile specimen.</summary>
/// <param name="Width">Smallest width, in mm.</param>
/// <param name="Thickness">Smallest thickness, in mm.</param>
/// <param name="Force">Highest force, in kN.</param>
/// <param name="Place">Where it broke; must be reported (ISO 4136:2012).</param>
public sealed record TensileEntry(
    Measured Width,
    Measured Thickness,
    Measured Force,
    FracturePlace Place
)
{
    /// <summary>The specimen with its strength; width, thickness and force lie above zero.</summary>
    public TensileSpecimen Specimen =>
        new(
            Engineering.Quantities.Force.FromKilonewtons(Force.InUnit()),
            Length.FromMillimetres(Width.InUnit()),
            Length.FromMillimetres(Thickness.InUnit()),
            Place
        );
}

/// <summary>A bend specimen.</summary>
/// <param name="Former">Diameter of the former, in mm.</param>
/// <param name="Angle">Angle reached, in °.</param>
/// <param name="LongestCrack">Longest crack on the tension face, in mm; 0 when there is none.</param>
public sealed record BendEntry(Measured Former, Measured Angle, Measured LongestCrack);

/// <summary>An imperfection with its size.</summary>
/// <param name="Name">Imperfection as the table names it, or in the examiner's words.</param>
/// <param name="Size">Size, in mm.</param>
/// <param name="DesignLimit">Greatest size of the design specification in mm, where the table has none.</param>
public sealed record SizedImperfection(string Name, Measured Size, Measured? DesignLimit);

/// <summary>An examination of a surface, a volume or a section.</summary>
/// <param name="IsAcceptable">The examiner's verdict by the acceptance standard on what has no size.</param>
/// <param name="Findings">What was seen, in words; <c>none</c> when nothing was.</param>
/// <param name="Imperfections">Imperfections with their sizes.</param>
public sealed record ExaminationEntry(
    bool IsAcceptable,
    string Findings,
    IReadOnlyList<SizedImperfection> Imperfections
);

/// <summary>A value against the limit that the acceptance standard or the design gives.</summary>
/// <param name="Value">Measured value.</param>
/// <param name="AtLeast">Least value, in the same unit; null when there is none.</param>
/// <param name="AtMost">Greatest value, in the same unit; null when there is none.</param>
/// <param name="Series">All single values in words, for instance of a hardness traverse.</param>
public sealed record ValueEntry(Measured Value, Measured? AtLeast, Measured? AtMost, string Series);

/// <summary>What was measured; the one entry that fits the kind of test is filled.</summary>
/// <param name="Tensile">Of a tensile test.</param>
/// <param name="Bend">Of a bend test.</param>
/// <param name="Examination">Of an examination or section.</param>
/// <param name="Value">Of a hardness or leak test.</param>
public sealed record SpecimenEntry(
    TensileEntry? Tensile = null,
    BendEntry? Bend = null,
    ExaminationEntry? Examination = null,
    ValueEntry? Value = null
);

/// <summary>How a test was made.</summary>
/// <param name="Method">Method standard.</param>
/// <param name="MethodEdition">Its edition.</param>
/// <param name="Acceptance">Acceptance standard or specification, a separate field since method standards set no limits.</param>
/// <param name="AcceptanceEdition">Its edition and level.</param>
/// <param name="WrittenProcedure">Number of the written procedure; may be empty.</param>
/// <param name="TestedOn">Day of the test.</param>
/// <param name="Remark">Anything worth telling; may be empty.</param>
public sealed record TestHeader(
    string Method,
    string MethodEdition,
    string Acceptance,
    string AcceptanceEdition,
    string WrittenProcedure,
    DateOnly TestedOn,
    string Remark
);
