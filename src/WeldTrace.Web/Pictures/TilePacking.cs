using System.Runtime.InteropServices;
using SkiaSharp;

namespace WeldTrace.Web.Pictures;

/// <summary>Packs a tile as the JPEG that browsers show.</summary>
internal static class TilePacking
{
    private const int Quality = 85;

    /// <param name="pixels">Red, green, blue and alpha of each pixel, as bytes or as whole numbers.</param>
    /// <param name="width">Width in pixels.</param>
    /// <param name="height">Height in pixels.</param>
    public static SKData Pack(Array pixels, int width, int height)
    {
        var info = new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque);
        ArgumentOutOfRangeException.ThrowIfLessThan(Buffer.ByteLength(pixels), info.BytesSize);
        var pinned = GCHandle.Alloc(pixels, GCHandleType.Pinned);
        try
        {
            using var map = new SKPixmap(info, pinned.AddrOfPinnedObject(), info.RowBytes);
            return map.Encode(SKEncodedImageFormat.Jpeg, Quality)
                ?? throw new InvalidOperationException("A tile could not be packed.");
        }
        finally
        {
            pinned.Free();
        }
    }
}
