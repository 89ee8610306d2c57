using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.Traveler;

/// <summary>Signatures of the ledger, and room for signatures by hand.</summary>
internal static class SignaturePart
{
    public static IEnumerable<Block> Blocks(
        IReadOnlyList<SignatureEntry> signatures,
        IReadOnlyList<string> signedOnPaper,
        DocumentStamp stamp
    )
    {
        yield return new Heading("Signatures", 2);
        if (signatures.Count == 0)
        {
            yield return new Paragraph("Nothing has been signed yet.");
        }
        else
        {
            yield return new Paragraph(SignatureTable.Explanation, keepsWithNext: true);
            yield return SignatureTable.Of(signatures, stamp.TimeZone);
        }

        if (signedOnPaper.Count > 0)
        {
            yield return new Heading("Signed on this paper", 4);
        }

        foreach (var role in signedOnPaper)
        {
            yield return new SignatureBlock(role);
        }
    }
}
