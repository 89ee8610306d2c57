using ZstdSharp;

namespace WeldTrace.ProcessLogs;

/// <summary>A large file of a log as it was brought, packed by zstd (RFC 8878) where its samples don't give it back.</summary>
public static class PackedOriginal
{
    private const int BufferSize = 1024 * 1024;

    /// <summary>Packs a file in fixed memory.</summary>
    /// <param name="original">The bytes as brought.</param>
    /// <param name="target">Takes the packed bytes.</param>
    /// <param name="mostBytes">Most packed bytes.</param>
    /// <param name="cancellation">Ends the packing.</param>
    /// <returns>Whether the packed bytes are no more than that; if not, the target holds a part of them.</returns>
    public static async Task<bool> PackAsync(
        Stream original,
        Stream target,
        long mostBytes,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(original);
        ArgumentNullException.ThrowIfNull(target);
        await using (var packed = new CompressionStream(target, leaveOpen: true))
        {
            var buffer = new byte[BufferSize];
            for (int read; (read = await original.ReadAsync(buffer, cancellation)) > 0; )
            {
                await packed.WriteAsync(buffer.AsMemory(0, read), cancellation);
                if (target.Length > mostBytes)
                {
                    return false;
                }
            }
        }

        return target.Length <= mostBytes;
    }

    /// <summary>The bytes as brought, read from the packed ones.</summary>
    /// <param name="packed">What <see cref="PackAsync"/> wrote.</param>
    public static Stream Unpack(Stream packed) => new DecompressionStream(packed, leaveOpen: false);
}
