using System.IO.Compression;
using System.Security.Cryptography;

namespace WeldTrace.Verify;

/// <summary>Unpacks file after file, counting true bytes; what the ZIP says of sizes is not believed.</summary>
internal sealed class Unpacker(BundleLimits limits)
{
    private readonly byte[] _buffer = new byte[128 * 1024];
    private long _total;

    public UnpackedFile Unpack(ZipArchiveEntry entry, bool keep)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        using var document = keep ? new MemoryStream() : null;
        using var stream = entry.Open();
        long bytes = 0;
        for (int read; (read = stream.Read(_buffer)) > 0; )
        {
            bytes += read;
            _total += read;
            Require(entry, bytes, keep);
            hash.AppendData(_buffer, 0, read);
            document?.Write(_buffer, 0, read);
        }
        if (bytes != entry.Length)
        {
            throw new InvalidDataException("The ZIP gives the file another length than it has.");
        }
        var sha256 = Convert.ToHexStringLower(hash.GetHashAndReset());
        return new UnpackedFile(entry.FullName, bytes, sha256, document?.ToArray());
    }

    private void Require(ZipArchiveEntry entry, long bytes, bool keep)
    {
        var largest = keep ? limits.DocumentBytes : limits.FileBytes;
        if (bytes > largest)
        {
            throw new RefusedBundleException(
                entry.FullName,
                $"The file unpacks to more than {largest} bytes."
            );
        }
        if (_total > limits.TotalBytes)
        {
            throw new RefusedBundleException(
                entry.FullName,
                $"The bundle unpacks to more than {limits.TotalBytes} bytes."
            );
        }
        if (bytes > limits.RatioFrom && bytes / limits.Ratio > entry.CompressedLength)
        {
            throw new RefusedBundleException(
                entry.FullName,
                $"The file unpacks to more than {limits.Ratio} times its packed size."
            );
        }
    }
}
