using WeldTrace.Domain.Ledger;
using WeldTrace.Verify.Zip;

namespace WeldTrace.Verify;

/// <summary>Checks a history bundle with nothing but the bundle.</summary>
public static class BundleVerifier
{
    /// <summary>Reads the whole bundle once and names everything that is wrong with it.</summary>
    /// <param name="zip">The bundle; must be seekable.</param>
    /// <param name="expectedFingerprint">Fingerprint of the site's key, had from the site by another way.</param>
    /// <param name="limits">How much is unpacked; generous limits if left out.</param>
    public static BundleReport Verify(
        Stream zip,
        string? expectedFingerprint = null,
        BundleLimits? limits = null
    )
    {
        ArgumentNullException.ThrowIfNull(zip);
        var problems = new ProblemList();
        try
        {
            var contents = Unpack(zip, limits ?? new BundleLimits(), problems);
            return contents is null
                ? new BundleReport { Problems = problems.All }
                : Check(contents, expectedFingerprint, problems);
        }
        catch (RefusedBundleException refusal)
        {
            problems.Add(ProblemKind.Refused, refusal.Path, refusal.Message);
        }
        return new BundleReport { Problems = problems.All };
    }

    private static BundleContents? Unpack(Stream zip, BundleLimits limits, ProblemList problems)
    {
        var directory = ZipEnd.Find(zip, limits);
        var items = ZipItems.Read(zip, directory);
        ZipNames.Check(items, problems);
        if (problems.All.Count > 0)
        {
            return null;
        }
        var contents = new BundleContents();
        var unpacker = new Unpacker(zip, limits);
        foreach (var item in ZipLayout.Check(zip, items, directory).Where(item => !item.IsFolder))
        {
            contents.Paths.Add(item.Name);
            Unpack(item, unpacker, contents, problems);
        }
        return contents;
    }

    private static void Unpack(
        ZipItem item,
        Unpacker unpacker,
        BundleContents contents,
        ProblemList problems
    )
    {
        try
        {
            var keep = BundleContents.IsDocument(item.Name);
            contents.Add(unpacker.Unpack(item, keep), problems);
        }
        catch (InvalidDataException error)
        {
            problems.Add(ProblemKind.Unreadable, item.Name, error.Message);
        }
    }

    private static BundleReport Check(
        BundleContents contents,
        string? expectedFingerprint,
        ProblemList problems
    )
    {
        var manifest = ManifestCheck.Run(contents, problems);
        var (key, signed) = SignatureCheck.Run(contents, expectedFingerprint, problems);
        var checkpoint = LedgerCheck.Run(contents, signed, problems);
        RecordCheck.Run(contents, manifest, problems);
        ExchangeCheck.Run(contents, manifest, problems);
        if (manifest is not null && checkpoint is not null)
        {
            CompareSites(manifest, checkpoint, problems);
        }
        return new BundleReport
        {
            Problems = problems.All,
            Notes = problems.Notes,
            Manifest = manifest,
            Checkpoint = checkpoint,
            Fingerprint = key?.Fingerprint,
            Entries = contents.Ledger.LeafHashes.Count,
        };
    }

    private static void CompareSites(
        BundleManifest manifest,
        Checkpoint checkpoint,
        ProblemList problems
    )
    {
        if (manifest.SiteName != checkpoint.SiteName)
        {
            problems.Add(
                ProblemKind.Signature,
                BundlePaths.Checkpoint,
                "The checkpoint is of another site than the manifest."
            );
        }
    }
}
