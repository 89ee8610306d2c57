using System.Runtime.InteropServices;
using SkiaSharp;

namespace WeldTrace.Web.Pictures;

/// <summary>
/// A JPEG row by row; whatever the library can't read by rows, such as a progressive JPEG or an interlaced PNG, is decoded as a whole,
/// which takes four bytes per pixel while its levels are built.
/// </summary>
internal sealed class SkiaRaster : IRaster
{
    private readonly GCHandle _bytes;
    private readonly SKData _data;
    private readonly SKCodec _codec;
    private readonly SKImageInfo _info;
    private readonly bool _isByRows;
    private SKBitmap? _whole;
    private int _row;

    public SkiaRaster(byte[] bytes)
    {
        _bytes = GCHandle.Alloc(bytes, GCHandleType.Pinned);
        _data = SKData.Create(_bytes.AddrOfPinnedObject(), bytes.Length);
        _codec =
            SKCodec.Create(_data)
            ?? throw new DamagedPictureException("The head of the picture can't be read.");
        _info = new SKImageInfo(
            _codec.Info.Width,
            _codec.Info.Height,
            SKColorType.Rgba8888,
            SKAlphaType.Premul
        );
        _isByRows = _codec.StartScanlineDecode(_info) == SKCodecResult.Success;
    }

    public int Width => _info.Width;

    public int Height => _info.Height;

    public void ReadRows(byte[] rgba, int rows)
    {
        var rowBytes = Width * 4;
        if (!_isByRows)
        {
            Whole().GetPixelSpan().Slice(_row * rowBytes, rows * rowBytes).CopyTo(rgba);
        }
        else
        {
            var pinned = GCHandle.Alloc(rgba, GCHandleType.Pinned);
            try
            {
                var read = _codec.GetScanlines(pinned.AddrOfPinnedObject(), rows, rowBytes);
                if (read != rows)
                {
                    throw BrokenOff(_row + Math.Max(read, 0));
                }
            }
            finally
            {
                pinned.Free();
            }
        }

        _row += rows;
    }

    public void Dispose()
    {
        _whole?.Dispose();
        _codec.Dispose();
        _data.Dispose();
        _bytes.Free();
    }

    private SKBitmap Whole()
    {
        if (_whole is not null)
        {
            return _whole;
        }

        _whole = new SKBitmap(_info);
        var result = _codec.GetPixels(_info, _whole.GetPixels());
        return result == SKCodecResult.Success ? _whole : throw BrokenOff(null);
    }

    private static DamagedPictureException BrokenOff(int? row) =>
        new(
            row is { } at
                ? FormattableString.Invariant(
                    $"The photograph is damaged or ends in mid-file, at row {at}. Copy it again from the camera, then choose it again."
                )
                : "The photograph is damaged or ends in mid-file. Copy it again from the camera, then choose it again."
        );
}
