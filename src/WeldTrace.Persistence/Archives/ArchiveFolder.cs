using System.IO.Compression;
using WeldTrace.Persistence.PrivateServer;
using WeldTrace.Persistence.Roles;

namespace WeldTrace.Persistence.Archives;

/// <summary>
/// Where the bundles of archived vessels are kept, beside the database. A draft is a bundle of a vessel that is not
/// archived yet; a kept one bears the identity of its archive.
/// </summary>
/// <param name="path">The folder; made when it is first written to.</param>
public sealed class ArchiveFolder(string path)
{
    private const int Buffer = 128 * 1024;

    /// <summary>The folder.</summary>
    public string FullPath { get; } = Path.GetFullPath(path);

    /// <summary>The folder in the data folder of an installation.</summary>
    public static ArchiveFolder In(DatabaseSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return new(Path.Combine(settings.Folder, "archive"));
    }

    /// <summary>A new draft of a vessel, instead of any before it.</summary>
    public FileStream CreateDraft(Guid vessel)
    {
        Directory.CreateDirectory(FullPath);
        PrivateFile.SetMode(FullPath, PrivateFile.OwnerFolder);
        return new(
            DraftOf(vessel),
            new FileStreamOptions
            {
                Mode = FileMode.Create,
                Access = FileAccess.ReadWrite,
                Share = FileShare.Read | FileShare.Delete,
                Options = FileOptions.Asynchronous,
                BufferSize = Buffer,
            }
        );
    }

    /// <summary>The draft of a vessel; null when there is none.</summary>
    public FileStream? FindDraft(Guid vessel) => Find(DraftOf(vessel));

    public void DeleteDraft(Guid vessel) => File.Delete(DraftOf(vessel));

    /// <summary>Keeps the draft of a vessel as the bundle of an archive: under its name on the disk, before anything leaves the database.</summary>
    public void Keep(Guid vessel, Guid archive)
    {
        File.Move(DraftOf(vessel), PathOf(archive));
        // What is written through is the file together with the name that it was given.
        using var kept = new FileStream(PathOf(archive), FileMode.Open, FileAccess.ReadWrite);
        kept.Flush(flushToDisk: true);
    }

    /// <summary>Makes the bundle of an archive that was not saved a draft again.</summary>
    public void GiveBack(Guid archive, Guid vessel) =>
        File.Move(PathOf(archive), DraftOf(vessel), overwrite: true);

    /// <summary>The bundle of an archive; null when it is not in the folder.</summary>
    public FileStream? Find(Guid archive) => Find(PathOf(archive));

    /// <summary>Reads one file of the bundle of an archive.</summary>
    /// <param name="archive">Archive.</param>
    /// <param name="isWanted">Tells the file by its path in the bundle.</param>
    /// <param name="read">Reads it.</param>
    /// <param name="cancellation">Ends the reading.</param>
    /// <exception cref="FileNotFoundException">The bundle, or the file in it, is missing.</exception>
    public async Task<T> ReadAsync<T>(
        Guid archive,
        Func<string, bool> isWanted,
        Func<Stream, Task<T>> read,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(isWanted);
        ArgumentNullException.ThrowIfNull(read);
        await using var file =
            Find(archive)
            ?? throw new FileNotFoundException(
                $"The bundle of archive {archive} is not in {FullPath}; put {Path.GetFileName(PathOf(archive))} back."
            );
        await using var zip = await ZipArchive.CreateAsync(
            file,
            ZipArchiveMode.Read,
            leaveOpen: true,
            entryNameEncoding: null,
            cancellation
        );
        var entry =
            zip.Entries.FirstOrDefault(e => isWanted(e.FullName))
            ?? throw new FileNotFoundException(
                $"The bundle of archive {archive} does not hold what it was written for."
            );
        await using var stream = await entry.OpenAsync(cancellation);
        return await read(stream);
    }

    private static FileStream? Find(string path) =>
        File.Exists(path)
            ? new(
                path,
                new FileStreamOptions
                {
                    Share = FileShare.Read | FileShare.Delete,
                    Options = FileOptions.Asynchronous,
                    BufferSize = Buffer,
                }
            )
            : null;

    private string DraftOf(Guid vessel) => Path.Combine(FullPath, $"draft-{vessel:N}.zip");

    private string PathOf(Guid archive) => Path.Combine(FullPath, $"{archive:N}.zip");
}
