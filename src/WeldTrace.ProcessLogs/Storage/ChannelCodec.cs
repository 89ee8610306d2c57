using System.Runtime.InteropServices;
using WeldTrace.ProcessLogs.Storage;
using ZstdSharp;

namespace WeldTrace.ProcessLogs;

/// <summary>
/// Compresses and restores the samples of one column without loss. Layout, version 1: version, codec, decimals,
/// order of differences, count and count of negative zeros (32 bits each, little endian), zstd frame of the
/// shuffled samples and the places of the negative zeros. Not for several threads at once.
/// </summary>
public sealed class ChannelCodec : IDisposable
{
    /// <summary>Most samples in one block.</summary>
    public const int MostSamples = 1 << 24;

    private const int Level = 1;

    private readonly Compressor _compressor = new(Level);
    private readonly Decompressor _decompressor = new();
    private uint[] _steps = [];
    private byte[] _payload = [];
    private byte[] _output = [];

    /// <summary>Encodes whole numbers of the last digit.</summary>
    /// <param name="codes">The samples times ten to the power of <paramref name="decimals"/>.</param>
    /// <param name="decimals">0 to 9.</param>
    /// <param name="negativeZeros">Places, ascending, where a zero was written with a minus sign.</param>
    public byte[] Encode(
        ReadOnlySpan<int> codes,
        int decimals,
        ReadOnlySpan<int> negativeZeros = default
    )
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(codes.Length, MostSamples, nameof(codes));
        ArgumentOutOfRangeException.ThrowIfNegative(decimals);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(decimals, PowersOfTen.MostDecimals);
        var order = Differences.BestOrder(codes);
        var steps = Room(ref _steps, codes.Length);
        var payload = Room(ref _payload, (codes.Length + negativeZeros.Length) * sizeof(int));
        Differences.Encode(codes, order, steps);
        ByteShuffle.Split(steps, payload);
        MemoryMarshal.AsBytes(negativeZeros).CopyTo(payload[(codes.Length * sizeof(int))..]);
        return Pack(
            payload,
            new(ChunkCodec.Int32Zstd, decimals, order, codes.Length, negativeZeros.Length)
        );
    }

    /// <summary>Encodes samples that are not fixed decimals.</summary>
    public byte[] Encode(ReadOnlySpan<double> values)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(values.Length, MostSamples, nameof(values));
        var payload = Room(ref _payload, values.Length * sizeof(double));
        ByteShuffle.Split(values, payload);
        return Pack(payload, new(ChunkCodec.Float64Zstd, 0, 0, values.Length, 0));
    }

    /// <summary>Restores what <c>Encode</c> made.</summary>
    /// <exception cref="InvalidDataException">The bytes are damaged or of an unknown version.</exception>
    public void Decode(ReadOnlySpan<byte> bytes, SampleBlock block)
    {
        ArgumentNullException.ThrowIfNull(block);
        var layout = ChunkLayout.Read(bytes);
        if (layout.Codec == ChunkCodec.Float64Zstd)
        {
            ByteShuffle.Join(
                Unpack(bytes, layout.Count * sizeof(double)),
                block.ResetFloats(layout.Count)
            );
            return;
        }

        var payload = Unpack(bytes, (layout.Count + layout.NegativeZeros) * sizeof(int));
        var steps = Room(ref _steps, layout.Count);
        ByteShuffle.Join(payload[..(layout.Count * sizeof(int))], steps);
        Differences.Decode(steps, layout.Order, block.ResetCodes(layout.Count, layout.Decimals));
        block.SetNegativeZeros(
            MemoryMarshal.Cast<byte, int>(payload[(layout.Count * sizeof(int))..])
        );
    }

    public void Dispose()
    {
        _compressor.Dispose();
        _decompressor.Dispose();
    }

    private byte[] Pack(ReadOnlySpan<byte> payload, ChunkLayout layout)
    {
        var output = Room(
            ref _output,
            ChunkLayout.Length + Compressor.GetCompressBound(payload.Length)
        );
        layout.Write(output);
        var packed = _compressor.Wrap(payload, output[ChunkLayout.Length..]);
        return output[..(ChunkLayout.Length + packed)].ToArray();
    }

    private ReadOnlySpan<byte> Unpack(ReadOnlySpan<byte> bytes, int length)
    {
        var payload = Room(ref _payload, length);
        try
        {
            return _decompressor.Unwrap(bytes[ChunkLayout.Length..], payload) == length
                ? payload
                : throw new InvalidDataException("The samples are damaged: there are too few.");
        }
        catch (ZstdException damage)
        {
            throw new InvalidDataException("The samples are damaged.", damage);
        }
    }

    private static Span<T> Room<T>(ref T[] array, int length)
    {
        array = array.Length < length ? GC.AllocateUninitializedArray<T>(length) : array;
        return array.AsSpan(0, length);
    }
}
