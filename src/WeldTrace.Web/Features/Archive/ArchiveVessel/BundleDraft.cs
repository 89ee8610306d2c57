using System.Security.Cryptography;
using WeldTrace.Domain.Archiving;
using WeldTrace.Domain.Ledger;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence.Archives;
using WeldTrace.Verify;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Archive.ArchiveVessel;

/// <summary>A bundle that waits for the signature.</summary>
/// <param name="WrittenAt">UTC instant.</param>
/// <param name="Bytes">Length.</param>
/// <param name="Hash">SHA-256, 64 lower-case hexadecimal digits.</param>
public sealed record WaitingBundle(DateTimeOffset WrittenAt, long Bytes, string Hash);

/// <summary>Writes the bundle of a vessel into the folder of archives, and verifies it from there as an auditor would.</summary>
public sealed class BundleDraft(ArchiveFolder folder, IHistoryBundles bundles, SiteKeyFolder keys)
{
    private const int DiskFull = 28;
    private const int MostProblemsShown = 3;

    /// <summary>The draft of a vessel; null when there is none.</summary>
    public async Task<WaitingBundle?> FindAsync(Guid vessel, CancellationToken cancellation)
    {
        await using var file = folder.FindDraft(vessel);
        return file is null
            ? null
            : new(
                File.GetLastWriteTimeUtc(file.Name),
                file.Length,
                Convert.ToHexStringLower(await SHA256.HashDataAsync(file, cancellation))
            );
    }

    /// <summary>Writes and verifies the draft; what does not hold is deleted.</summary>
    public async Task<Outcome> WriteAsync(
        ArchiveView view,
        Uri site,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(view);
        try
        {
            await using (var file = folder.CreateDraft(view.Vessel.Id))
            {
                await bundles.WriteAsync(view.Vessel.Serial, site, actor, file, cancellation);
                file.Flush(flushToDisk: true);
            }
        }
        catch (IOException failure) when ((failure.HResult & 0xFFFF) == DiskFull)
        {
            folder.DeleteDraft(view.Vessel.Id);
            return Outcome.Refused(
                "disk-full",
                "The disk of the server is full, so the bundle was not written and nothing was changed. Make room, then try again."
            );
        }

        var verified = await VerifyAsync(view.Vessel.Id, cancellation);
        if (!verified.IsAccepted)
        {
            folder.DeleteDraft(view.Vessel.Id);
        }

        return verified.WithoutValue();
    }

    /// <summary>Reads the draft of a vessel again, whole.</summary>
    public async Task<Outcome<VerifiedBundle>> VerifyAsync(
        Guid vessel,
        CancellationToken cancellation
    )
    {
        await using var file = folder.FindDraft(vessel);
        if (file is null)
        {
            return new Refusal("bundle", "The bundle is not written yet; write it first.");
        }

        var hash = Convert.ToHexStringLower(await SHA256.HashDataAsync(file, cancellation));
        file.Position = 0;
        var report = BundleVerifier.Verify(file, keys.Current.Fingerprint);
        return report.IsVerified
            ? new VerifiedBundle(
                new ArchivedBundle(hash, file.Length, report.Checkpoint!.TreeSize),
                report.Manifest!
            )
            : new Refusal(
                "bundle",
                $"The bundle does not verify, and nothing was archived: {string.Join(" ", report.Problems.Take(MostProblemsShown).Select(p => $"{p.Path}: {p.Message}"))} Check the ledger, then write the bundle again."
            );
    }

    /// <summary>Keeps the draft under the identity of the archive that is about to be saved.</summary>
    public void Keep(Guid vessel, Guid archive) => folder.Keep(vessel, archive);

    /// <summary>Takes that back when it was not saved.</summary>
    public void GiveBack(Guid archive, Guid vessel) => folder.GiveBack(archive, vessel);
}
