using System.Buffers.Binary;

namespace WeldTrace.ProcessLogs.Storage;

/// <summary>The first bytes of a compressed chunk.</summary>
internal readonly record struct ChunkLayout(
    ChunkCodec Codec,
    int Decimals,
    int Order,
    int Count,
    int NegativeZeros
)
{
    public const int Length = 12;
    private const byte Version = 1;
    private const int HighestOrder = 2;

    private bool IsValid =>
        Codec is ChunkCodec.Int32Zstd or ChunkCodec.Float64Zstd
        && Decimals <= PowersOfTen.MostDecimals
        && Order <= HighestOrder
        && Count is >= 0 and <= ChannelCodec.MostSamples
        && NegativeZeros >= 0
        && NegativeZeros <= Count;

    public void Write(Span<byte> bytes)
    {
        (bytes[0], bytes[1], bytes[2], bytes[3]) = (
            Version,
            (byte)Codec,
            (byte)Decimals,
            (byte)Order
        );
        BinaryPrimitives.WriteInt32LittleEndian(bytes[4..], Count);
        BinaryPrimitives.WriteInt32LittleEndian(bytes[8..], NegativeZeros);
    }

    /// <exception cref="InvalidDataException">The bytes are damaged or of an unknown version.</exception>
    public static ChunkLayout Read(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length >= Length && bytes[0] == Version)
        {
            var count = BinaryPrimitives.ReadInt32LittleEndian(bytes[4..]);
            var zeros = BinaryPrimitives.ReadInt32LittleEndian(bytes[8..]);
            var layout = new ChunkLayout((ChunkCodec)bytes[1], bytes[2], bytes[3], count, zeros);
            if (layout.IsValid)
            {
                return layout;
            }
        }

        throw new InvalidDataException(
            "The samples are damaged or of a version that is not known."
        );
    }
}
