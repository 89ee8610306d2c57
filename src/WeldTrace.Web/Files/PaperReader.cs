using System.Security.Cryptography;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence.Attachments;

namespace WeldTrace.Web.Files;

/// <summary>Takes in a scanned paper, for instance a certificate: a PDF, JPEG or PNG file, recognised by its content.</summary>
public static class PaperReader
{
    public const long MostBytes = 20L * 1024 * 1024;

    /// <summary>Largest request that a form with a paper may send.</summary>
    public const long MostRequestBytes = MostBytes + (1024 * 1024);

    /// <summary>What a browser offers to choose.</summary>
    public const string Accept = "application/pdf,image/jpeg,image/png";

    public const string Hint = "PDF, JPEG or PNG, up to 20 MB; kept unchanged.";

    private static readonly (byte[] Start, string MediaType)[] Known =
    [
        ("%PDF-"u8.ToArray(), "application/pdf"),
        ([0xFF, 0xD8, 0xFF], "image/jpeg"),
        ([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A], "image/png"),
    ];

    /// <summary>Reads a file that may be left out.</summary>
    /// <param name="file">File as handed in; null when none was.</param>
    /// <param name="field">Name of its field.</param>
    /// <param name="refusals">Takes what is wrong with it.</param>
    /// <param name="cancellation">Ends the reading.</param>
    public static async Task<Attachment?> ReadOptionalAsync(
        IFormFile? file,
        string field,
        ICollection<Refusal> refusals,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(refusals);
        if (file is null || file.Length == 0)
        {
            return null;
        }

        if (file.Length > MostBytes)
        {
            refusals.Add(
                new Refusal(
                    "file",
                    FormattableString.Invariant(
                        $"The file has {file.Length / 1048576.0:0.#} MB; at most {MostBytes / 1048576} MB are kept. Scan it with fewer dots per inch, then choose it again."
                    ),
                    field
                )
            );
            return null;
        }

        await using var stream = file.OpenReadStream();
        using var memory = new MemoryStream((int)file.Length);
        await stream.CopyToAsync(memory, cancellation);
        var bytes = memory.ToArray();
        if (MediaTypeOf(bytes) is { } mediaType)
        {
            return new Attachment
            {
                Sha256 = Convert.ToHexStringLower(SHA256.HashData(bytes)),
                MediaType = mediaType,
                Length = bytes.LongLength,
                Bytes = bytes,
            };
        }

        refusals.Add(
            new Refusal(
                "file",
                "The file is no PDF, JPEG or PNG, whatever its name says. Scan or export the paper as one of these, then choose it again.",
                field
            )
        );
        return null;
    }

    private static string? MediaTypeOf(ReadOnlySpan<byte> bytes)
    {
        foreach (var (start, mediaType) in Known)
        {
            if (bytes.StartsWith(start))
            {
                return mediaType;
            }
        }

        return null;
    }
}
