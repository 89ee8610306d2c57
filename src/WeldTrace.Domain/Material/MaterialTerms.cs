using WeldTrace.Domain.Limits;
using WeldTrace.Engineering.Conformity;
using Measured = WeldTrace.Domain.Records.Measured;

namespace WeldTrace.Domain.Material;

/// <summary>Types of inspection documents (EN 10204:2004), each stronger than the one before.</summary>
public enum InspectionDocumentType
{
    /// <summary>2.1: declaration of compliance.</summary>
    Type21,

    /// <summary>2.2: report of non-specific tests.</summary>
    Type22,

    /// <summary>3.1: results of specific inspection, validated by the maker's representative who is independent of manufacturing.</summary>
    Type31,

    /// <summary>3.2: as 3.1, and validated by the purchaser's or an official inspector too.</summary>
    Type32,
}

/// <summary>The inspection document that is on file for a lot.</summary>
/// <param name="Type">Type by EN 10204:2004.</param>
/// <param name="ProductStandard">Product standard that it names.</param>
/// <param name="FileSha256">SHA-256 of its scan; null while none is handed in.</param>
public sealed record InspectionDocument(
    InspectionDocumentType Type,
    string ProductStandard,
    string? FileSha256
);

/// <summary>Results of the inspection as they stand in the document; null where it gives none.</summary>
/// <param name="TensileStrength">Rm, in MPa.</param>
/// <param name="ProofStrength">Rp0.2, in MPa.</param>
/// <param name="Elongation">A, in %.</param>
/// <param name="Thickness">Thickness, or wall, in mm.</param>
public sealed record MaterialValues(
    Measured? TensileStrength,
    Measured? ProofStrength,
    Measured? Elongation,
    Measured? Thickness
);

/// <summary>One value held against its minimum.</summary>
/// <param name="Name">Property.</param>
/// <param name="Value">Value of the document; null when it gives none.</param>
/// <param name="Least">Minimum; null when the table has none.</param>
/// <param name="Verdict">Verdict; null when either is missing.</param>
/// <param name="Sentence">The verdict in words.</param>
public sealed record MaterialLine(
    string Name,
    Measured? Value,
    Measured? Least,
    Verdict? Verdict,
    string Sentence
);

/// <summary>The results of a lot, judged by a table of minima.</summary>
/// <param name="Values">Results.</param>
/// <param name="Minima">Table that they were judged by; null when none fits the material.</param>
/// <param name="Lines">Each property.</param>
public sealed record MaterialResults(
    MaterialValues Values,
    LimitReference? Minima,
    IReadOnlyList<MaterialLine> Lines
)
{
    /// <summary>Whether some value misses its minimum, or the minimum asks for a value that is missing.</summary>
    public bool Misses => Lines.Any(l => l.Verdict is Verdict.Fail or Verdict.Undecided);
}

/// <summary>Words for inspection documents.</summary>
public static class InspectionDocuments
{
    /// <summary>The type as printed, for instance <c>3.1</c>.</summary>
    public static string Word(InspectionDocumentType type) =>
        type switch
        {
            InspectionDocumentType.Type21 => "2.1",
            InspectionDocumentType.Type22 => "2.2",
            InspectionDocumentType.Type31 => "3.1",
            InspectionDocumentType.Type32 => "3.2",
            _ => throw new ArgumentOutOfRangeException(nameof(type), type, "Unknown type."),
        };

    /// <summary>The stronger of two demands; null when neither asks for anything.</summary>
    public static InspectionDocumentType? Stronger(
        InspectionDocumentType? one,
        InspectionDocumentType? other
    ) => one > other || other is null ? one : other;

    /// <summary>Whether the document must give results of specific inspection.</summary>
    public static bool IsSpecific(InspectionDocumentType type) =>
        type >= InspectionDocumentType.Type31;
}
