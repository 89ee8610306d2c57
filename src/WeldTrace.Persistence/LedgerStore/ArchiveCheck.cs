using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Archiving;

namespace WeldTrace.Persistence.LedgerStore;

/// <summary>
/// Reads the bundles of all archives again. A bundle was verified when it was archived and its hash stands in a signed
/// record, so that what it holds is unchanged when the whole of it is.
/// </summary>
internal sealed class ArchiveCheck
{
    private readonly Dictionary<Guid, VesselArchive> _archives;
    private readonly List<string> _problems = [];

    private ArchiveCheck(IEnumerable<VesselArchive> archives) =>
        _archives = archives.ToDictionary(a => a.Id);

    public IReadOnlyList<string> Problems => _problems;

    public static async Task<ArchiveCheck> ReadAsync(
        WeldTraceDbContext db,
        IProgress<LedgerProgress>? progress,
        CancellationToken cancellation
    )
    {
        // One that can't be read any more is told where all records are compared.
        var archives = await EveryRecord.ReadAsync(db.VesselArchives, cancellation);
        var check = new ArchiveCheck(archives);
        for (var read = 0; read < archives.Count; read++)
        {
            progress?.Report(new LedgerProgress("archives", read, archives.Count));
            await check.CompareAsync(db, archives[read], cancellation);
        }

        return check;
    }

    /// <summary>Whether an archive was written for a file.</summary>
    public bool Holds(Guid archive, string file) =>
        _archives.GetValueOrDefault(archive) is { } found && found.Files.Contains(file);

    /// <summary>The hash of the process log of a run that an archive was written for; null when it was for none.</summary>
    public string? LogOf(Guid archive, Guid run) =>
        _archives.GetValueOrDefault(archive)?.Logs.FirstOrDefault(l => l.RunId == run)?.Hash;

    private async Task CompareAsync(
        WeldTraceDbContext db,
        VesselArchive archive,
        CancellationToken cancellation
    )
    {
        await using var bundle = db.Archive?.Find(archive.Id);
        if (bundle is null)
        {
            _problems.Add(
                $"The bundle of archive {archive.Id}, vessel {archive.VesselSerial}, is missing from the folder of archives."
            );
        }
        else if (
            Convert.ToHexStringLower(await SHA256.HashDataAsync(bundle, cancellation))
            != archive.Bundle.Hash
        )
        {
            _problems.Add(
                $"The bundle of archive {archive.Id}, vessel {archive.VesselSerial}, was changed: it no longer gives its hash."
            );
        }
    }
}
