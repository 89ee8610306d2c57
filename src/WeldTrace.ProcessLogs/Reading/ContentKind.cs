using System.Text;

namespace WeldTrace.ProcessLogs.Reading;

/// <summary>Tells text from other content by the first bytes of a file.</summary>
internal static class ContentKind
{
    private const int Inspected = 4096;
    private static readonly byte[] Gzip = [0x1F, 0x8B];
    private static readonly byte[] Zstd = [0x28, 0xB5, 0x2F, 0xFD];

    private static readonly (byte[] Signature, string Name)[] Signatures =
    [
        ("%PDF"u8.ToArray(), "a PDF document"),
        ("PK\u0003\u0004"u8.ToArray(), "a ZIP archive or spreadsheet"),
        (Gzip, "an archive in an archive"),
        (Zstd, "an archive in an archive"),
        ([0x89, 0x50, 0x4E, 0x47], "a PNG image"),
        ([0xFF, 0xD8, 0xFF], "a JPEG image"),
        ([0xD0, 0xCF, 0x11, 0xE0], "an old office document"),
        ("SQLite format 3"u8.ToArray(), "a database file"),
        ("\u007FELF"u8.ToArray(), "a program"),
        ("MZ"u8.ToArray(), "a program"),
        ("{\\rtf"u8.ToArray(), "a word processor document"),
        ("<!DOCTYPE"u8.ToArray(), "a web page"),
        ("<html"u8.ToArray(), "a web page"),
        ("<?xml"u8.ToArray(), "an XML document"),
    ];

    /// <summary>How a file is packed, by its first bytes.</summary>
    public static LogPacking PackingOf(ReadOnlySpan<byte> head) =>
        head.StartsWith(Gzip) ? LogPacking.Gzip
        : head.StartsWith(Zstd) ? LogPacking.Zstd
        : LogPacking.None;

    /// <summary>The encoding of a text; none when the bytes are not text.</summary>
    public static LogEncoding? EncodingOf(ReadOnlySpan<byte> head)
    {
        if (head is [0xFF, 0xFE, ..])
        {
            return LogEncoding.Utf16LittleEndian;
        }

        if (head is [0xFE, 0xFF, ..])
        {
            return LogEncoding.Utf16BigEndian;
        }

        var inspected = head[..Math.Min(head.Length, Inspected)];
        return inspected.Contains((byte)0) ? WithoutMark(inspected)
            : HasControls(inspected) ? null
            : IsUtf8(head) ? LogEncoding.Utf8
            : LogEncoding.Latin1;
    }

    /// <summary>What a file is when it is not a log, in words; none when the signature is not known.</summary>
    public static string? NameOf(ReadOnlySpan<byte> head)
    {
        foreach (var (signature, name) in Signatures)
        {
            if (head.StartsWith(signature))
            {
                return name;
            }
        }

        return null;
    }

    private static LogEncoding? WithoutMark(ReadOnlySpan<byte> head)
    {
        var (even, odd) = (0, 0);
        for (var i = 0; i < head.Length; i++)
        {
            even += head[i] == 0 && i % 2 == 0 ? 1 : 0;
            odd += head[i] == 0 && i % 2 == 1 ? 1 : 0;
        }

        var most = head.Length * 2 / 5;
        return odd >= most && even == 0 ? LogEncoding.Utf16LittleEndian
            : even >= most && odd == 0 ? LogEncoding.Utf16BigEndian
            : null;
    }

    private static bool HasControls(ReadOnlySpan<byte> head)
    {
        foreach (var c in head)
        {
            if (c < 0x20 && c is not ((byte)'\t' or (byte)'\n' or (byte)'\r'))
            {
                return true;
            }
        }

        return false;
    }

    private static bool IsUtf8(ReadOnlySpan<byte> head)
    {
        while (!head.IsEmpty)
        {
            var status = Rune.DecodeFromUtf8(head, out _, out var used);
            if (status == System.Buffers.OperationStatus.NeedMoreData)
            {
                return true;
            }

            if (status != System.Buffers.OperationStatus.Done)
            {
                return false;
            }

            head = head[used..];
            var ascii = head.IndexOfAnyExceptInRange((byte)0, (byte)0x7F);
            head = ascii < 0 ? [] : head[ascii..];
        }

        return true;
    }
}
