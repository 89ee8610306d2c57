using System.IO.Compression;
using WeldTrace.Domain.Ledger;

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
        catch (Exception error) when (error is InvalidDataException or EndOfStreamException)
        {
            problems.Add(ProblemKind.Refused, "", "The ZIP is damaged: " + error.Message);
        }
        return new BundleReport { Problems = problems.All };
    }

    private static BundleContents? Unpack(Stream zip, BundleLimits limits, ProblemList problems)
    {
        ZipEnd.Check(zip, limits);
        zip.Position = 0;
        using var archive = new ZipArchive(zip, ZipArchiveMode.Read, leaveOpen: true);
        var entries = ZipNames.Check(archive.Entries, problems);
        if (problems.All.Count > 0)
        {
            return null;
        }
        var contents = new BundleContents();
        var unpacker = new Unpacker(limits);
        foreach (var entry in entries)
        {
            contents.Paths.Add(entry.FullName);
            Unpack(entry, unpacker, contents, problems);
        }
        return contents;
    }

    private static void Unpack(
        ZipArchiveEntry entry,
        Unpacker unpacker,
        BundleContents contents,
        ProblemList problems
    )
    {
        try
        {
            var keep = BundleContents.IsDocument(entry.FullName);
            contents.Add(unpacker.Unpack(entry, keep), problems);
        }
        catch (Exception error)
            when (error is InvalidDataException or EndOfStreamException or NotSupportedException)
        {
            problems.Add(ProblemKind.Unreadable, entry.FullName, error.Message);
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
