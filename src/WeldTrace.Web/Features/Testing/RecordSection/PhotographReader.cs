using System.Security.Cryptography;
using SkiaSharp;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sectioning;

namespace WeldTrace.Web.Features.Testing.RecordSection;

/// <summary>A photograph with its original bytes.</summary>
public sealed record BroughtPhotograph(Photograph Photograph, byte[] Bytes);

/// <summary>Recognises a photograph by its content and reads its size from the header; no pixel is decoded.</summary>
public static class PhotographReader
{
    public const long MostBytes = 50L * 1024 * 1024;
    public const long MostPixels = 100_000_000;

    private const string Field = nameof(RecordSectionForm.Photograph);
    private const int LongestName = 120;

    public static async Task<Outcome<BroughtPhotograph>> ReadAsync(
        IFormFile? file,
        CancellationToken cancellation
    )
    {
        if (file is null || file.Length == 0)
        {
            return Refuse($"Choose the photograph of the section, a JPEG or PNG file.");
        }

        if (file.Length > MostBytes)
        {
            return Refuse(
                $"The file has {file.Length / 1048576.0:0.#} MB; at most {MostBytes / 1048576} MB are kept. Save it smaller or as JPEG, then choose it again."
            );
        }

        await using var stream = file.OpenReadStream();
        using var memory = new MemoryStream((int)file.Length);
        await stream.CopyToAsync(memory, cancellation);
        return Read(memory.ToArray(), file.FileName);
    }

    /// <summary>Recognises the bytes of a file.</summary>
    public static Outcome<BroughtPhotograph> Read(byte[] bytes, string fileName)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        ArgumentNullException.ThrowIfNull(fileName);
        using var data = SKData.CreateCopy(bytes);
        using var codec = SKCodec.Create(data);
        if (codec is null || MediaTypeOf(codec.EncodedFormat) is not { } mediaType)
        {
            return Refuse(
                $"The file is no JPEG or PNG photograph, whatever its name says. Save it as JPEG or PNG, then choose it again."
            );
        }

        var (width, height) = (codec.Info.Width, codec.Info.Height);
        if ((long)width * height > MostPixels)
        {
            return Refuse(
                $"The photograph has {width} × {height} pixels, {(long)width * height / 1e6:0} megapixels; at most {MostPixels / 1_000_000} are kept. Save it smaller, then choose it again."
            );
        }

        if (!IsComplete(bytes, codec.EncodedFormat))
        {
            return Refuse(
                $"The photograph ends in mid-file. Copy it again from the camera, then choose it again."
            );
        }

        var sha256 = Convert.ToHexStringLower(SHA256.HashData(bytes));
        return new BroughtPhotograph(
            new Photograph(sha256, NameOf(fileName), mediaType, width, height),
            bytes
        );
    }

    private static Refusal Refuse(FormattableString sentence) =>
        new("photograph", FormattableString.Invariant(sentence), Field);

    private static string? MediaTypeOf(SKEncodedImageFormat format) =>
        format switch
        {
            SKEncodedImageFormat.Jpeg => "image/jpeg",
            SKEncodedImageFormat.Png => "image/png",
            _ => null,
        };

    // Cameras may add data of their own after the end mark.
    private static bool IsComplete(ReadOnlySpan<byte> bytes, SKEncodedImageFormat format) =>
        bytes.LastIndexOf(format == SKEncodedImageFormat.Png ? "IEND"u8 : [0xFF, 0xD9]) > 0;

    private static string NameOf(string fileName)
    {
        var name = fileName.Split('/', '\\')[^1];
        var plain = new string([.. name.Where(c => !char.IsControl(c))]).Trim();
        return plain.Length == 0 ? "photograph"
            : plain.Length <= LongestName ? plain
            : plain[^LongestName..];
    }
}
