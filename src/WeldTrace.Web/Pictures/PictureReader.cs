using System.Security.Cryptography;
using SkiaSharp;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sectioning;
using WeldTrace.Persistence.Attachments;

namespace WeldTrace.Web.Pictures;

/// <summary>A photograph with its original bytes.</summary>
public sealed record BroughtPhotograph(Photograph Photograph, byte[] Bytes)
{
    /// <summary>The bytes as they are kept.</summary>
    public Attachment ToAttachment() =>
        new()
        {
            Sha256 = Photograph.Sha256,
            MediaType = Photograph.MediaType,
            Length = Bytes.LongLength,
            Bytes = Bytes,
        };
}

/// <summary>Recognises a photograph by its content and reads its size and what the camera wrote; no pixel is decoded.</summary>
public static class PictureReader
{
    public const long MostBytes = 200L * 1024 * 1024;
    public const long MostPixels = 100_000_000;

    /// <summary>Largest request; more than a photograph may have, so that one too large is told so instead of being cut off.</summary>
    public const int MostRequestBytes = 256 * 1024 * 1024;

    /// <summary>What a browser offers to choose.</summary>
    public const string Accept = "image/jpeg,image/png,image/tiff";

    public const string Hint =
        "JPEG, PNG or TIFF, up to 200 MB and 100 megapixels; the original is kept unchanged, with what the camera wrote.";

    public const string Field = "Photograph";
    private const int LongestName = 120;

    public static async Task<Outcome<BroughtPhotograph>> ReadAsync(
        IFormFile? file,
        CancellationToken cancellation
    )
    {
        if (file is null || file.Length == 0)
        {
            return Refuse($"Choose the photograph of the section, a JPEG, PNG or TIFF file.");
        }

        if (file.Length > MostBytes)
        {
            return Refuse(
                $"The file has {file.Length / 1048576.0:0.#} MB; at most {MostBytes / 1048576} MB are kept. Save it smaller or as JPEG, then choose it again."
            );
        }

        var bytes = GC.AllocateUninitializedArray<byte>((int)file.Length);
        await using var stream = file.OpenReadStream();
        await stream.ReadExactlyAsync(bytes, cancellation);
        return Read(bytes, file.FileName);
    }

    /// <summary>Recognises the bytes of a file.</summary>
    public static Outcome<BroughtPhotograph> Read(byte[] bytes, string fileName)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        ArgumentNullException.ThrowIfNull(fileName);
        if (Head(bytes) is not { } head)
        {
            return Refuse(
                $"The file is no JPEG, PNG or TIFF photograph, whatever its name says. Save it as one of these, then choose it again."
            );
        }

        var (mediaType, width, height) = head;
        if (width < 1 || height < 1 || (long)width * height > MostPixels)
        {
            return Refuse(
                $"The photograph has {width} × {height} pixels, {(long)width * height / 1e6:0} megapixels; at most {MostPixels / 1_000_000} are kept. Save it smaller, then choose it again."
            );
        }

        var camera = CameraData.Read(bytes, mediaType);
        return new BroughtPhotograph(
            new Photograph(
                Convert.ToHexStringLower(SHA256.HashData(bytes)),
                NameOf(fileName),
                mediaType,
                width,
                height
            )
            {
                Orientation = camera.Orientation == 1 ? null : camera.Orientation,
                TakenAt = camera.TakenAt,
                Camera = camera.Camera,
                IsCameraDataBroken = camera.IsBroken ? true : null,
            },
            bytes
        );
    }

    /// <summary>The pixels of a photograph that was recognised.</summary>
    internal static IRaster Open(byte[] bytes, string mediaType) =>
        mediaType switch
        {
            "image/tiff" => TiffRaster.TryOpen(bytes)
                ?? throw new DamagedPictureException("The head of the picture can't be read."),
            "image/png" when PngRaster.TryOpen(bytes) is { } png => png,
            _ => new SkiaRaster(bytes),
        };

    private static (string MediaType, int Width, int Height)? Head(byte[] bytes)
    {
        if (bytes.AsSpan().StartsWith("II"u8) || bytes.AsSpan().StartsWith("MM"u8))
        {
            return TiffRaster.Head(bytes) is { } tiff
                ? ("image/tiff", tiff.Width, tiff.Height)
                : null;
        }

        using var data = SKData.CreateCopy(bytes.AsSpan(0, Math.Min(bytes.Length, LongestHead)));
        using var codec = SKCodec.Create(data);
        return codec?.EncodedFormat switch
        {
            SKEncodedImageFormat.Jpeg => ("image/jpeg", codec.Info.Width, codec.Info.Height),
            SKEncodedImageFormat.Png => ("image/png", codec.Info.Width, codec.Info.Height),
            _ => null,
        };
    }

    // Cameras put previews and colour profiles before the size of the picture.
    private const int LongestHead = 4 * 1024 * 1024;

    private static Refusal Refuse(FormattableString sentence) =>
        new("photograph", FormattableString.Invariant(sentence), Field);

    private static string NameOf(string fileName)
    {
        var name = fileName.Split('/', '\\')[^1];
        var plain = new string([.. name.Where(c => !char.IsControl(c))]).Trim();
        return plain.Length == 0 ? "photograph"
            : plain.Length <= LongestName ? plain
            : plain[^LongestName..];
    }
}
