using System.Security.Cryptography;
using System.Text.Json;
using WeldTrace.Persistence.Roles;
using WeldTrace.Web.Files;

namespace WeldTrace.Web.Features.Welding;

/// <summary>
/// Keeps the logs that machines sent by themselves, until a run takes them. A piece counts once it is on the disk; what a
/// break leaves behind it is cut off again.
/// </summary>
public sealed class ArrivedLogs(IConfiguration configuration, TimeProvider clock) : IDisposable
{
    private const int BufferSize = 128 * 1024;
    private readonly SemaphoreSlim _writing = new(1);

    private string Folder => Path.Combine(new DatabaseSettings(configuration).Folder, "arrivals");

    /// <summary>Begins an arrival, or finds the one of the same bytes that is under way or here already.</summary>
    public async Task<ArrivedLog> BeginAsync(
        Guid machineId,
        string fileName,
        long length,
        string sha256,
        CancellationToken cancellation
    )
    {
        await _writing.WaitAsync(cancellation);
        try
        {
            Directory.CreateDirectory(Folder);
            if (Find(a => a.MachineId == machineId && a.Sha256 == sha256) is { } known)
            {
                return known;
            }

            var at = clock.GetUtcNow();
            var id = Guid.CreateVersion7(at);
            var name = StagedLogs.Clean(fileName);
            var begun = new ArrivedLog(id, machineId, name, length, sha256, at, null);
            await File.WriteAllBytesAsync(PathOf(id), [], cancellation);
            Write(begun);
            return begun;
        }
        finally
        {
            _writing.Release();
        }
    }

    /// <summary>An arrival of a machine; null when there is none.</summary>
    public ArrivedLog? Find(Guid machineId, Guid id) =>
        Find(a => a.Id == id && a.MachineId == machineId);

    /// <summary>The logs of a machine that are here whole, the latest first.</summary>
    public IReadOnlyList<ArrivedLog> WholeOf(Guid machineId) =>
        [
            .. All()
                .Where(a => a.MachineId == machineId && a.ArrivedAt is not null)
                .OrderByDescending(a => a.ArrivedAt),
        ];

    /// <summary>Bytes that are kept for good.</summary>
    public long OffsetOf(ArrivedLog arrival)
    {
        ArgumentNullException.ThrowIfNull(arrival);
        return new FileInfo(PathOf(arrival.Id)).Length;
    }

    /// <summary>Appends a piece; a break in it leaves the arrival as it was before.</summary>
    public async Task<PieceResult> AppendAsync(
        ArrivedLog arrival,
        long from,
        Stream piece,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(arrival);
        ArgumentNullException.ThrowIfNull(piece);
        await _writing.WaitAsync(cancellation);
        try
        {
            var offset = OffsetOf(arrival);
            if (from != offset || arrival.ArrivedAt is not null)
            {
                return new PieceResult.Misplaced(offset);
            }

            var written = await WriteAsync(arrival, offset, piece, cancellation);
            return written < 0 ? new PieceResult.Misplaced(offset)
                : offset + written < arrival.Length ? new PieceResult.Kept(offset + written)
                : await EndAsync(arrival, cancellation);
        }
        finally
        {
            _writing.Release();
        }
    }

    /// <summary>Opens an arrival that is here whole.</summary>
    public Stream Open(ArrivedLog arrival)
    {
        ArgumentNullException.ThrowIfNull(arrival);
        return new FileStream(
            PathOf(arrival.Id),
            new FileStreamOptions { BufferSize = BufferSize, Options = FileOptions.Asynchronous }
        );
    }

    /// <summary>Removes the arrivals of the same bytes once a run has taken them.</summary>
    public void RemoveTaken(Guid machineId, string sha256)
    {
        foreach (var taken in All().Where(a => a.MachineId == machineId && a.Sha256 == sha256))
        {
            Remove(taken);
        }
    }

    /// <summary>The number of bytes written; -1, and nothing is kept, when they are more than announced.</summary>
    private async Task<long> WriteAsync(
        ArrivedLog arrival,
        long offset,
        Stream piece,
        CancellationToken cancellation
    )
    {
        await using var file = new FileStream(PathOf(arrival.Id), FileMode.Open, FileAccess.Write);
        file.Position = offset;
        var isKept = false;
        try
        {
            var buffer = new byte[BufferSize];
            for (int read; (read = await piece.ReadAsync(buffer, cancellation)) > 0; )
            {
                if (file.Position + read > arrival.Length)
                {
                    return -1;
                }

                await file.WriteAsync(buffer.AsMemory(0, read), cancellation);
            }

            file.Flush(flushToDisk: true);
            isKept = true;
            return file.Position - offset;
        }
        finally
        {
            if (!isKept)
            {
                file.SetLength(offset);
            }
        }
    }

    private async Task<PieceResult> EndAsync(ArrivedLog arrival, CancellationToken cancellation)
    {
        string hash;
        await using (var whole = Open(arrival))
        {
            hash = Convert.ToHexStringLower(await SHA256.HashDataAsync(whole, cancellation));
        }

        if (hash != arrival.Sha256)
        {
            Remove(arrival);
            return new PieceResult.Damaged();
        }

        Write(arrival with { ArrivedAt = clock.GetUtcNow() });
        return new PieceResult.Kept(arrival.Length);
    }

    private ArrivedLog? Find(Func<ArrivedLog, bool> isWanted) => All().FirstOrDefault(isWanted);

    private IEnumerable<ArrivedLog> All() =>
        Directory.Exists(Folder)
            ? Directory.EnumerateFiles(Folder, "*.json").Select(Read).OfType<ArrivedLog>()
            : [];

    private static ArrivedLog? Read(string path)
    {
        try
        {
            return JsonSerializer.Deserialize<ArrivedLog>(File.ReadAllText(path));
        }
        catch (FileNotFoundException)
        {
            return null;
        }
    }

    // Renamed into place, so that a break leaves either what was known before or what is known now.
    private void Write(ArrivedLog arrival)
    {
        var path = PathOf(arrival.Id) + ".json";
        File.WriteAllText(path + ".new", JsonSerializer.Serialize(arrival));
        File.Move(path + ".new", path, overwrite: true);
    }

    private void Remove(ArrivedLog arrival)
    {
        File.Delete(PathOf(arrival.Id) + ".json");
        File.Delete(PathOf(arrival.Id));
    }

    private string PathOf(Guid id) => Path.Combine(Folder, id.ToString("N"));

    public void Dispose() => _writing.Dispose();
}
