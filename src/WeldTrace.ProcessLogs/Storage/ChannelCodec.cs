using System.Buffers.Binary;
using WeldTrace.ProcessLogs.Storage;
using ZstdSharp;

namespace WeldTrace.ProcessLogs;

/// <summary>
/// Compresses and restores the samples of one column without loss. Layout, version 1: version, codec, decimals,
/// order of differences, count (32 bits, little endian), zstd frame of the shuffled bytes. Not for several
/// threads at once.
/// </summary>
public sealed class ChannelCodec : IDisposable
{
    /// <summary>Most samples in one block.</summary>
    public const int MostSamples = 1 << 24;

    private const byte Version = 1;
    private const int HeaderLength = 8;
    private const int Level = 1;

    private readonly Compressor _compressor = new(Level);
    private readonly Decompressor _decompressor = new();
    private uint[] _steps = [];
    private byte[] _planes = [];
    private byte[] _output = [];

    /// <summary>Encodes whole numbers of the last digit.</summary>
    /// <param name="codes">The samples times ten to the power of <paramref name="decimals"/>.</param>
    /// <param name="decimals">0 to 9.</param>
    public byte[] Encode(ReadOnlySpan<int> codes, int decimals)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(codes.Length, MostSamples, nameof(codes));
        ArgumentOutOfRangeException.ThrowIfNegative(decimals);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(decimals, PowersOfTen.MostDecimals);
        var order = Differences.BestOrder(codes);
        var steps = Room(ref _steps, codes.Length);
        var planes = Room(ref _planes, codes.Length * sizeof(int));
        Differences.Encode(codes, order, steps);
        ByteShuffle.Split(steps, planes);
        return Pack(planes, ChunkCodec.Int32Zstd, decimals, order, codes.Length);
    }

    /// <summary>Encodes samples that are not fixed decimals.</summary>
    public byte[] Encode(ReadOnlySpan<double> values)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(values.Length, MostSamples, nameof(values));
        var planes = Room(ref _planes, values.Length * sizeof(double));
        ByteShuffle.Split(values, planes);
        return Pack(planes, ChunkCodec.Float64Zstd, 0, 0, values.Length);
    }

    /// <summary>Restores what <c>Encode</c> made.</summary>
    /// <exception cref="InvalidDataException">The bytes are damaged or of an unknown version.</exception>
    public void Decode(ReadOnlySpan<byte> bytes, SampleBlock block)
    {
        ArgumentNullException.ThrowIfNull(block);
        var count =
            bytes.Length < HeaderLength ? -1 : BinaryPrimitives.ReadInt32LittleEndian(bytes[4..]);
        if (
            count is < 0 or > MostSamples
            || bytes[0] != Version
            || bytes[2] > PowersOfTen.MostDecimals
            || bytes[3] > 2
        )
        {
            throw new InvalidDataException(
                "The samples are damaged or of a version that is not known."
            );
        }

        switch ((ChunkCodec)bytes[1])
        {
            case ChunkCodec.Int32Zstd:
                var steps = Room(ref _steps, count);
                ByteShuffle.Join(Unpack(bytes, count * sizeof(int)), steps);
                Differences.Decode(steps, bytes[3], block.ResetCodes(count, bytes[2]));
                break;
            case ChunkCodec.Float64Zstd:
                ByteShuffle.Join(Unpack(bytes, count * sizeof(double)), block.ResetFloats(count));
                break;
            default:
                throw new InvalidDataException("The samples are of a codec that is not known.");
        }
    }

    public void Dispose()
    {
        _compressor.Dispose();
        _decompressor.Dispose();
    }

    private byte[] Pack(
        ReadOnlySpan<byte> planes,
        ChunkCodec codec,
        int decimals,
        int order,
        int count
    )
    {
        var output = Room(ref _output, HeaderLength + Compressor.GetCompressBound(planes.Length));
        (output[0], output[1], output[2], output[3]) = (
            Version,
            (byte)codec,
            (byte)decimals,
            (byte)order
        );
        BinaryPrimitives.WriteInt32LittleEndian(output[4..], count);
        var packed = _compressor.Wrap(planes, output[HeaderLength..]);
        return output[..(HeaderLength + packed)].ToArray();
    }

    private ReadOnlySpan<byte> Unpack(ReadOnlySpan<byte> bytes, int length)
    {
        var planes = Room(ref _planes, length);
        try
        {
            return _decompressor.Unwrap(bytes[HeaderLength..], planes) == length
                ? planes
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
