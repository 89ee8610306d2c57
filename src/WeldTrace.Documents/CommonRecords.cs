namespace WeldTrace.Documents;

/// <summary>A shape that stands beside the word of a state, so that it reads in black and white.</summary>
public enum MarkShape
{
    /// <summary>Waiting, planned, not begun.</summary>
    Ring,

    /// <summary>In progress, partly done, undecided.</summary>
    HalfDisc,

    /// <summary>Passed, accepted, released, closed.</summary>
    Disc,

    /// <summary>Failed, rejected, withdrawn, scrapped.</summary>
    Cross,

    /// <summary>On hold, open finding, waived, unchecked.</summary>
    Triangle,
}

/// <summary>A state in words with its shape, for instance <c>passed</c> and a filled disc.</summary>
public sealed record StateMark(string Word, MarkShape Shape);

/// <summary>One line of a label-and-value grid; a missing value prints as an en dash. The value carries its unit.</summary>
public sealed record LabelledValue(string Label, string? Value);

/// <summary>Says that a record was replaced by a later version; the old one is printed struck through.</summary>
/// <param name="Reason">Why it was corrected.</param>
/// <param name="CorrectedBy">Printed name of the person who corrected it.</param>
/// <param name="CorrectedAt">When.</param>
/// <param name="ReplacedBy">Reference of the record that takes its place.</param>
public sealed record Correction(
    string Reason,
    string CorrectedBy,
    DateTimeOffset CorrectedAt,
    string? ReplacedBy
);

/// <summary>A photograph as it was uploaded.</summary>
/// <param name="Content">The bytes of a JPEG or PNG file.</param>
/// <param name="Caption">Printed below the picture.</param>
/// <param name="AlternativeText">Says in words what the picture shows.</param>
public sealed record Photograph(
    ReadOnlyMemory<byte> Content,
    string Caption,
    string AlternativeText
)
{
    /// <summary>What was measured on it; null when nothing was. Its points are those of the upright picture.</summary>
    public PictureOverlay? Overlay { get; init; }
}

/// <summary>One signature as recorded in the ledger.</summary>
/// <param name="PrintedName">Name of the person.</param>
/// <param name="Meaning">What the signature states.</param>
/// <param name="SignedAt">When.</param>
/// <param name="Record">Reference of the record that was signed.</param>
/// <param name="RecordHash">SHA-256 of the signed record in hexadecimal; printed shortened to 16 digits.</param>
public sealed record SignatureEntry(
    string PrintedName,
    string Meaning,
    DateTimeOffset SignedAt,
    string Record,
    string RecordHash
)
{
    public Correction? Superseded { get; init; }
}
