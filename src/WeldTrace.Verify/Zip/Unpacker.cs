using System.IO.Compression;
using System.Security.Cryptography;

namespace WeldTrace.Verify.Zip;

/// <summary>Unpacks file after file, counting true bytes; what the ZIP says of sizes is not believed.</summary>
internal sealed class Unpacker(Stream zip, BundleLimits limits)
{
    /// <summary>Number of the way of packing that does not pack.</summary>
    public const int Stored = 0;
    private const int Deflated = 8;
    private readonly byte[] _buffer = new byte[128 * 1024];
    private long _total;

    /// <exception cref="InvalidDataException">The file cannot be unpacked.</exception>
    /// <exception cref="RefusedBundleException">A limit is passed.</exception>
    public UnpackedFile Unpack(ZipItem item, bool keep)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        using var document = keep ? new MemoryStream() : null;
        using var stream = Open(item);
        long bytes = 0;
        for (int read; (read = stream.Read(_buffer)) > 0; )
        {
            bytes += read;
            _total += read;
            RequireLimits(item, bytes, keep);
            hash.AppendData(_buffer, 0, read);
            document?.Write(_buffer, 0, read);
        }
        if (bytes != item.Length)
        {
            throw new InvalidDataException(
                $"The file unpacks to {bytes} bytes, but the ZIP says {item.Length}."
            );
        }
        var sha256 = Convert.ToHexStringLower(hash.GetHashAndReset());
        return new UnpackedFile(item.Name, bytes, sha256, document?.ToArray());
    }

    private Stream Open(ZipItem item)
    {
        var packed = new PackedBytes(zip, item.DataOffset, item.PackedLength);
        return item.Method switch
        {
            Stored => packed,
            Deflated => new DeflateStream(packed, CompressionMode.Decompress),
            _ => throw new InvalidDataException($"Packing method {item.Method} is not known."),
        };
    }

    private void RequireLimits(ZipItem item, long bytes, bool keep)
    {
        var largest = keep ? limits.DocumentBytes : limits.FileBytes;
        if (bytes > largest)
        {
            throw Refuse(item, $"The file unpacks to more than {largest} bytes.");
        }
        if (_total > limits.TotalBytes)
        {
            throw Refuse(item, $"The bundle unpacks to more than {limits.TotalBytes} bytes.");
        }
        if (bytes > limits.RatioFrom && bytes / limits.Ratio > item.PackedLength)
        {
            throw Refuse(
                item,
                $"The file unpacks to more than {limits.Ratio} times its packed size."
            );
        }
    }

    private static RefusedBundleException Refuse(ZipItem item, string message) =>
        new(item.Name, message);
}
