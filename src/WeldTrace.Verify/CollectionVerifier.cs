using System.Text;
using WeldTrace.Domain.Ledger;
using WeldTrace.Verify.Zip;

namespace WeldTrace.Verify;

/// <summary>Checks a collection of history bundles with nothing but the collection: its list, and each bundle by itself.</summary>
public static class CollectionVerifier
{
    /// <summary>Whether the file calls itself a collection; what it holds is not believed for that.</summary>
    /// <param name="zip">Any file; must be seekable.</param>
    /// <param name="limits">How much is read; generous limits if left out.</param>
    public static bool IsCollection(Stream zip, BundleLimits? limits = null)
    {
        ArgumentNullException.ThrowIfNull(zip);
        try
        {
            var items = ZipItems.Read(zip, ZipEnd.Find(zip, limits ?? new BundleLimits()));
            return items.Any(i => i.Name == CollectionPaths.Contents)
                && items.All(i => i.Name != BundlePaths.Manifest);
        }
        catch (RefusedBundleException)
        {
            // The check of a bundle says what is wrong with it.
            return false;
        }
    }

    /// <summary>Reads the whole collection and names everything that is wrong with it.</summary>
    /// <param name="zip">The collection; must be seekable.</param>
    /// <param name="expectedFingerprint">Fingerprint of the site's key, had from the site by another way.</param>
    /// <param name="limits">How much of each bundle is unpacked; generous limits if left out.</param>
    public static CollectionReport Verify(
        Stream zip,
        string? expectedFingerprint = null,
        BundleLimits? limits = null
    )
    {
        ArgumentNullException.ThrowIfNull(zip);
        var problems = new ProblemList();
        try
        {
            var files = CollectionFiles.Open(zip, limits ?? new BundleLimits(), problems);
            if (files is not null)
            {
                return Check(files, expectedFingerprint, problems);
            }
        }
        catch (RefusedBundleException refusal)
        {
            problems.Add(ProblemKind.Refused, refusal.Path, refusal.Message);
        }
        return new CollectionReport { Problems = problems.All };
    }

    private static CollectionReport Check(
        CollectionFiles files,
        string? expectedFingerprint,
        ProblemList problems
    )
    {
        var contents = Read(
            files,
            CollectionPaths.Contents,
            b => CollectionContents.FromCanonicalBytes(b),
            problems
        );
        var key = Read(
            files,
            CollectionPaths.SiteKey,
            b => SitePublicKey.FromPem(Encoding.Latin1.GetString(b)),
            problems
        );
        CheckSignature(files, key, expectedFingerprint, problems);
        if (contents is null)
        {
            problems.Notes.Add("No history was checked: the list of contents is missing or fails.");
            return new CollectionReport
            {
                Problems = problems.All,
                Notes = problems.Notes,
                Fingerprint = key?.Fingerprint,
            };
        }

        Compare(files, contents, problems);
        return new CollectionReport
        {
            Bundles = [.. CheckBundles(files, contents, key, expectedFingerprint, problems)],
            Problems = problems.All,
            Notes = problems.Notes,
            Contents = contents,
            Fingerprint = key?.Fingerprint,
        };
    }

    private static void CheckSignature(
        CollectionFiles files,
        SitePublicKey? key,
        string? expectedFingerprint,
        ProblemList problems
    )
    {
        if (
            key is not null
            && expectedFingerprint is not null
            && key.Fingerprint != expectedFingerprint
        )
        {
            problems.Add(
                ProblemKind.Signature,
                CollectionPaths.SiteKey,
                $"The collection holds key {key.Fingerprint}; you named {expectedFingerprint}."
            );
        }
        foreach (
            var path in (string[])
                [
                    CollectionPaths.Contents,
                    CollectionPaths.ContentsSignature,
                    CollectionPaths.SiteKey,
                    CollectionPaths.Instructions,
                ]
        )
        {
            if (!files.Has(path))
            {
                problems.Add(ProblemKind.Removed, path, "Every collection has this file.");
            }
        }
        if (
            key is not null
            && files.Document(CollectionPaths.Contents) is { } signed
            && files.Document(CollectionPaths.ContentsSignature) is { } mark
            && !key.Verify(signed, mark)
        )
        {
            problems.Add(
                ProblemKind.Signature,
                CollectionPaths.Contents,
                "The key of the collection did not sign this: contents.json, contents.sig or site-key.pem was changed."
            );
        }
    }

    private static void Compare(
        CollectionFiles files,
        CollectionContents contents,
        ProblemList problems
    )
    {
        foreach (var listed in contents.Files)
        {
            if (!files.Has(listed.Path))
            {
                problems.Add(ProblemKind.Removed, listed.Path, "contents.json lists this file.");
            }
            else if (
                files.HashOf(listed.Path) is (var bytes, var sha256)
                && (bytes != listed.Bytes || sha256 != listed.Sha256)
            )
            {
                problems.Add(
                    ProblemKind.Changed,
                    listed.Path,
                    $"SHA-256 {sha256}; contents.json lists {listed.Sha256}."
                );
            }
        }
        string[] own = [CollectionPaths.Contents, CollectionPaths.ContentsSignature];
        foreach (
            var path in files
                .Paths.Except(contents.Files.Select(f => f.Path).Concat(own))
                .Order(StringComparer.Ordinal)
        )
        {
            problems.Add(ProblemKind.Added, path, "contents.json does not list this file.");
        }
    }

    // A bundle that was changed is still looked into: what was changed in it is told then.
    private static IEnumerable<CollectedReport> CheckBundles(
        CollectionFiles files,
        CollectionContents contents,
        SitePublicKey? key,
        string? expectedFingerprint,
        ProblemList problems
    )
    {
        foreach (var bundle in contents.Bundles.Where(b => files.Has(b.File.Path)))
        {
            using var zip = files.Bundle(bundle.File.Path);
            var report = BundleVerifier.Verify(zip, expectedFingerprint, files.Limits);
            var path = bundle.File.Path;
            if (report.Manifest is { } manifest && manifest.VesselSerial != bundle.VesselSerial)
            {
                problems.Add(
                    ProblemKind.Record,
                    path,
                    $"This is the history of {manifest.VesselSerial}; contents.json says {bundle.VesselSerial}."
                );
            }
            if (report.Manifest is { } made && made.SiteName != contents.SiteName)
            {
                problems.Add(ProblemKind.Record, path, "The history is of another site.");
            }
            if (report.Fingerprint is { } used && key is not null && used != key.Fingerprint)
            {
                problems.Add(
                    ProblemKind.Signature,
                    path,
                    $"The history holds key {used}, the collection {key.Fingerprint}."
                );
            }
            yield return new CollectedReport(path, bundle.VesselSerial, report);
        }
    }

    private static T? Read<T>(
        CollectionFiles files,
        string path,
        Func<byte[], T> read,
        ProblemList problems
    )
        where T : class
    {
        if (files.Document(path) is not { } bytes)
        {
            return null;
        }
        try
        {
            return read(bytes);
        }
        catch (FormatException error)
        {
            problems.Add(ProblemKind.Unreadable, path, error.Message);
            return null;
        }
    }
}
