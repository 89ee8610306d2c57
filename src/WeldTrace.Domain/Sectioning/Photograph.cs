namespace WeldTrace.Domain.Sectioning;

/// <summary>A photograph kept under its own hash.</summary>
/// <param name="Sha256">SHA-256 of the original bytes, hexadecimal.</param>
/// <param name="FileName">Name of the file as it was brought.</param>
/// <param name="MediaType">Media type, found from the content.</param>
/// <param name="WidthPixels">Width as stored in the file.</param>
/// <param name="HeightPixels">Height as stored in the file.</param>
public sealed record Photograph(
    string Sha256,
    string FileName,
    string MediaType,
    int WidthPixels,
    int HeightPixels
)
{
    /// <summary>Turn that the camera wrote (EXIF, 1 to 8); null when it stands upright or wrote none.</summary>
    public int? Orientation { get; init; }

    /// <summary>When the camera says it was taken, in its own words (EXIF); null when it doesn't.</summary>
    public string? TakenAt { get; init; }

    /// <summary>Maker and model of the camera (EXIF); null when it doesn't say.</summary>
    public string? Camera { get; init; }

    /// <summary>Whether what the camera wrote can't be read; null when it can, or when there is none.</summary>
    public bool? IsCameraDataBroken { get; init; }

    /// <summary>Width as it is shown, in pixels.</summary>
    public int ShownWidth => Orientation is >= 5 ? HeightPixels : WidthPixels;

    /// <summary>Height as it is shown, in pixels.</summary>
    public int ShownHeight => Orientation is >= 5 ? WidthPixels : HeightPixels;
}
