using System.Text;
using WeldTrace.Domain.Ledger;

namespace WeldTrace.Verify;

/// <summary>Checks both signatures and says which file is to blame.</summary>
internal static class SignatureCheck
{
    /// <returns>The key of the bundle, and whether the checkpoint is signed by it.</returns>
    public static (SitePublicKey? Key, bool CheckpointIsSigned) Run(
        BundleContents contents,
        string? expectedFingerprint,
        ProblemList problems
    )
    {
        if (ReadKey(contents, problems) is not { } key)
        {
            problems.Notes.Add("No signature was checked: the key is missing or unreadable.");
            return (null, false);
        }
        if (expectedFingerprint is not null && key.Fingerprint != expectedFingerprint)
        {
            problems.Add(
                ProblemKind.Signature,
                BundlePaths.SiteKey,
                $"The bundle holds key {key.Fingerprint}; you named {expectedFingerprint}."
            );
        }
        var manifest = Fits(key, contents, BundlePaths.Manifest, BundlePaths.ManifestSignature);
        var checkpoint = Fits(
            key,
            contents,
            BundlePaths.Checkpoint,
            BundlePaths.CheckpointSignature
        );
        Blame(manifest, checkpoint, problems);
        return (key, checkpoint == true);
    }

    private static void Blame(bool? manifest, bool? checkpoint, ProblemList problems)
    {
        if (manifest == false && checkpoint == true)
        {
            problems.Add(
                ProblemKind.Signature,
                BundlePaths.Manifest,
                "The site did not sign this: manifest.json or its signature manifest.sig was changed."
            );
        }
        else if (manifest == false)
        {
            problems.Add(
                ProblemKind.Signature,
                BundlePaths.SiteKey,
                "This key signed neither manifest.json (manifest.sig) nor ledger/checkpoint.json"
                    + " (ledger/checkpoint.sig): the key, or both documents or their signatures, were"
                    + " changed."
            );
        }
        else if (
            checkpoint == false
            && !problems.IsDamaged(BundlePaths.Checkpoint)
            && !problems.IsDamaged(BundlePaths.CheckpointSignature)
        )
        {
            problems.Add(
                ProblemKind.Signature,
                BundlePaths.CheckpointSignature,
                "The key that signed manifest.json did not sign ledger/checkpoint.json."
            );
        }
    }

    // Null when a file is missing: that is told elsewhere.
    private static bool? Fits(
        SitePublicKey key,
        BundleContents contents,
        string document,
        string signature
    ) =>
        contents.Document(document) is { } signed && contents.Document(signature) is { } mark
            ? key.Verify(signed, mark)
            : null;

    private static SitePublicKey? ReadKey(BundleContents contents, ProblemList problems)
    {
        if (contents.Document(BundlePaths.SiteKey) is not { } bytes)
        {
            return null;
        }
        try
        {
            return SitePublicKey.FromPem(Encoding.Latin1.GetString(bytes));
        }
        catch (FormatException error)
        {
            problems.Add(ProblemKind.Unreadable, BundlePaths.SiteKey, error.Message);
            return null;
        }
    }
}
