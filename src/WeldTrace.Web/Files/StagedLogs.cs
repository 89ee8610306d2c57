using System.Text.Json;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence.Roles;

namespace WeldTrace.Web.Files;

/// <summary>A process log that was brought and not taken yet.</summary>
/// <param name="Id">Identity of the upload.</param>
/// <param name="FileName">Name of the file as it was brought, cleaned.</param>
public sealed record StagedLog(Guid Id, string FileName);

/// <summary>
/// Keeps brought files in the data folder until their log is taken or another takes its place. They are no records:
/// nothing refers to them, and after a day they are removed.
/// </summary>
public sealed class StagedLogs(IConfiguration configuration, TimeProvider clock)
{
    /// <summary>Longest file taken.</summary>
    public const long MostBytes = 2L * 1024 * 1024 * 1024;

    private const int BufferSize = 128 * 1024;
    private const int LongestName = 120;
    private static readonly TimeSpan KeptFor = TimeSpan.FromDays(1);

    /// <summary>What is said of a file that is too long.</summary>
    public static Refusal TooLarge { get; } =
        new(
            "too-large",
            "The file is larger than 2 GB, the largest log that is taken. Export one run per file, or lower the recording rate."
        );

    /// <summary>What is said when a brought file is not here any more.</summary>
    public static Refusal Gone { get; } =
        new("gone", "The file that was brought is not here any more. Bring it again.");

    private string Folder => Path.Combine(new DatabaseSettings(configuration).Folder, "uploads");

    /// <summary>Writes a file down as it arrives. What is too long or breaks off leaves nothing behind.</summary>
    public async Task<Outcome<StagedLog>> KeepAsync(
        Guid runId,
        string? fileName,
        Stream content,
        long mostBytes,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(content);
        Directory.CreateDirectory(Folder);
        RemoveOld(runId);
        var staged = new StagedLog(Guid.CreateVersion7(clock.GetUtcNow()), Clean(fileName));
        var path = PathOf(runId, staged.Id);
        try
        {
            if (!await CopyAsync(content, path, mostBytes, cancellation))
            {
                Remove(path);
                return TooLarge;
            }

            await File.WriteAllTextAsync(
                path + ".json",
                JsonSerializer.Serialize(staged),
                cancellation
            );
            return staged;
        }
        catch
        {
            Remove(path);
            throw;
        }
    }

    /// <summary>What is known of a brought file; null when it is not here any more.</summary>
    public async Task<StagedLog?> FindAsync(Guid runId, Guid id, CancellationToken cancellation)
    {
        var path = PathOf(runId, id) + ".json";
        return File.Exists(path)
            ? JsonSerializer.Deserialize<StagedLog>(await File.ReadAllTextAsync(path, cancellation))
            : null;
    }

    /// <summary>The newest file brought under an identity, when one is here.</summary>
    public async Task<StagedLog?> NewestAsync(Guid runId, CancellationToken cancellation)
    {
        var found = Directory.Exists(Folder)
            ? Directory.EnumerateFiles(Folder, $"{runId:N}-*.json").Max(StringComparer.Ordinal)
            : null;
        return found is null
            ? null
            : JsonSerializer.Deserialize<StagedLog>(
                await File.ReadAllTextAsync(found, cancellation)
            );
    }

    /// <summary>Opens a brought file.</summary>
    public Stream Open(Guid runId, StagedLog staged)
    {
        ArgumentNullException.ThrowIfNull(staged);
        return new FileStream(
            PathOf(runId, staged.Id),
            new FileStreamOptions
            {
                BufferSize = BufferSize,
                Options = FileOptions.Asynchronous | FileOptions.SequentialScan,
            }
        );
    }

    /// <summary>Removes a brought file once its log is taken.</summary>
    public void Remove(Guid runId, StagedLog staged)
    {
        ArgumentNullException.ThrowIfNull(staged);
        Remove(PathOf(runId, staged.Id));
    }

    private static async Task<bool> CopyAsync(
        Stream content,
        string path,
        long mostBytes,
        CancellationToken cancellation
    )
    {
        await using var file = new FileStream(
            path,
            new FileStreamOptions
            {
                Mode = FileMode.CreateNew,
                Access = FileAccess.Write,
                Options = FileOptions.Asynchronous,
            }
        );
        var buffer = new byte[BufferSize];
        var written = 0L;
        for (int read; (read = await content.ReadAsync(buffer, cancellation)) > 0; )
        {
            written += read;
            if (written > mostBytes)
            {
                return false;
            }

            await file.WriteAsync(buffer.AsMemory(0, read), cancellation);
        }

        return true;
    }

    private string PathOf(Guid runId, Guid id) => Path.Combine(Folder, $"{runId:N}-{id:N}");

    private void RemoveOld(Guid runId)
    {
        var oldest = clock.GetUtcNow() - KeptFor;
        var mine = $"{runId:N}-";
        foreach (var file in new DirectoryInfo(Folder).EnumerateFiles())
        {
            if (
                file.Name.StartsWith(mine, StringComparison.Ordinal)
                || file.LastWriteTimeUtc < oldest
            )
            {
                file.Delete();
            }
        }
    }

    private static void Remove(string path)
    {
        File.Delete(path);
        File.Delete(path + ".json");
    }

    /// <summary>A file name without path and control characters, cut to a length that can be shown.</summary>
    internal static string Clean(string? fileName)
    {
        var name = string.Concat(
            Path.GetFileName((fileName ?? "").Replace('\\', '/'))
                .Where(c => !char.IsControl(c) && !char.IsSurrogate(c))
        );
        return name.Length switch
        {
            0 => "process log",
            > LongestName => name[^LongestName..],
            _ => name,
        };
    }
}
