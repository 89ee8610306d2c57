using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sectioning;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Archives;
using WeldTrace.Persistence.Roles;

namespace WeldTrace.Web.Pictures;

/// <summary>
/// Keeps the levels of each photograph in the data folder. They are no records: they follow from the original, which the database
/// holds under its hash, and are made again when they are missing.
/// </summary>
public sealed class PictureStore(
    IConfiguration configuration,
    IDbContextFactory<WeldTraceDbContext> contexts,
    TimeProvider clock
) : IDisposable
{
    // Whoever brought the picture looks at it first.
    private static readonly TimeSpan BeforePacking = TimeSpan.FromSeconds(20);

    // One at a time, so that two large photographs never need room together.
    private readonly SemaphoreSlim _building = new(1);
    private readonly CancellationTokenSource _ending = new();
    private readonly Lock _lock = new();
    private readonly HashSet<string> _toPack = [];
    private Task _packing = Task.CompletedTask;

    private string Folder => Path.Combine(new DatabaseSettings(configuration).Folder, "pictures");

    /// <summary>Makes the levels of a photograph that is being taken in; a refusal when its pixels can't be read to the end.</summary>
    public async Task<Outcome> TakeInAsync(
        BroughtPhotograph brought,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(brought);
        try
        {
            await BuildAsync(brought.Photograph, brought.Bytes, cancellation);
            return Outcome.Accepted;
        }
        catch (DamagedPictureException damage)
        {
            return Outcome.Refused("photograph", damage.Message, PictureReader.Field);
        }
    }

    /// <summary>A tile as JPEG; null when there is no such tile or photograph.</summary>
    internal async Task<byte[]?> TileAsync(
        Photograph photograph,
        int level,
        int x,
        int y,
        CancellationToken cancellation
    )
    {
        using var file = await OpenAsync(photograph, cancellation);
        return file?.Tile(level, x, y);
    }

    /// <summary>The photograph upright, as JPEG of at most so many pixels on its longer side; null when it can't be shown.</summary>
    public async Task<byte[]?> WholeAsync(
        Photograph photograph,
        int longestSide,
        CancellationToken cancellation
    )
    {
        using var file = await OpenAsync(photograph, cancellation);
        return file?.Whole(longestSide);
    }

    public void Dispose()
    {
        _ending.Cancel();
        _ending.Dispose();
        _building.Dispose();
    }

    private async Task<PyramidFile?> OpenAsync(
        Photograph photograph,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(photograph);
        if (PyramidFile.TryOpen(PathOf(photograph)) is { } kept)
        {
            if (kept.IsPlain)
            {
                PackLater(PathOf(photograph));
            }

            return kept;
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        if (
            await db.FindAttachmentAsync(photograph.Sha256, cancellation)
            is not { Bytes: var original }
        )
        {
            return null;
        }

        try
        {
            await BuildAsync(photograph, original, cancellation);
        }
        catch (DamagedPictureException)
        {
            // Recorded before pixels were read at once; the original can still be fetched.
            return null;
        }

        return PyramidFile.TryOpen(PathOf(photograph));
    }

    private async Task BuildAsync(
        Photograph photograph,
        byte[] bytes,
        CancellationToken cancellation
    )
    {
        var path = PathOf(photograph);
        await _building.WaitAsync(cancellation);
        try
        {
            using (var kept = PyramidFile.TryOpen(path))
            {
                if (kept is not null)
                {
                    return;
                }
            }

            Directory.CreateDirectory(Folder);
            var unfinished = $"{path}.{Path.GetRandomFileName()}";
            try
            {
                await Task.Run(
                    () =>
                    {
                        using var raster = PictureReader.Open(bytes, photograph.MediaType);
                        PyramidBuilder.Build(raster, photograph.Orientation ?? 1, unfinished);
                    },
                    cancellation
                );
                File.Move(unfinished, path, overwrite: true);
                PackLater(path);
            }
            finally
            {
                File.Delete(unfinished);
            }
        }
        finally
        {
            _building.Release();
        }
    }

    /// <summary>Packs the plain tiles of a picture in a while, one picture after the other. What is not done by the end is done when it is next looked at.</summary>
    private void PackLater(string path)
    {
        lock (_lock)
        {
            if (!_ending.IsCancellationRequested && _toPack.Add(path))
            {
                _packing = PackAsync(_packing, path);
            }
        }
    }

    private async Task PackAsync(Task before, string path)
    {
        var end = _ending.Token;
        await before;
        var unfinished = $"{path}.{Path.GetRandomFileName()}";
        try
        {
            await Task.Delay(BeforePacking, clock, end);
            using var plain = PyramidFile.TryOpen(path);
            if (plain is { IsPlain: true })
            {
                await Task.Run(() => plain.Pack(unfinished, end), end);
                File.Move(unfinished, path, overwrite: true);
            }
        }
        catch (Exception stopped) when (stopped is OperationCanceledException or IOException)
        {
            // The plain tiles serve as well; they only take more room.
        }
        finally
        {
            File.Delete(unfinished);
            lock (_lock)
            {
                _toPack.Remove(path);
            }
        }
    }

    private string PathOf(Photograph photograph) =>
        Path.Combine(Folder, $"{photograph.Sha256}.tiles");
}
