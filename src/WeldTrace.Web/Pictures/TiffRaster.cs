using BitMiracle.LibTiff.Classic;

namespace WeldTrace.Web.Pictures;

/// <summary>A TIFF row by row: grey, colour or with a palette, 8 or 16 bits a channel, in strips or tiles.</summary>
internal sealed class TiffRaster : IRaster
{
    private readonly Tiff _tiff;
    private readonly int _channels;
    private readonly int _bytesOfChannel;
    private readonly Photometric _photometric;
    private readonly ushort[][]? _palette;
    private readonly byte[] _row;
    private readonly TiffTileRows? _tiles;
    private int _next;

    private TiffRaster(Tiff tiff)
    {
        _tiff = tiff;
        (Width, Height) = (Tag(TiffTag.IMAGEWIDTH, 0), Tag(TiffTag.IMAGELENGTH, 0));
        _channels = Tag(TiffTag.SAMPLESPERPIXEL, 1);
        _bytesOfChannel = Tag(TiffTag.BITSPERSAMPLE, 1) / 8;
        _photometric = (Photometric)Tag(TiffTag.PHOTOMETRIC, (int)Photometric.MINISBLACK);
        if (
            _photometric == Photometric.YCBCR
            && Tag(TiffTag.COMPRESSION, 1) == (int)Compression.JPEG
        )
        {
            _tiff.SetField(TiffTag.JPEGCOLORMODE, JpegColorMode.RGB);
            _photometric = Photometric.RGB;
        }

        if (
            _photometric == Photometric.PALETTE
            && _tiff.GetField(TiffTag.COLORMAP) is { Length: 3 } map
        )
        {
            _palette = [.. map.Select(m => (ushort[])m.Value)];
        }

        RequireKnownKind();
        _row = new byte[
            Math.Max(
                Width * _channels * _bytesOfChannel,
                _tiff.IsTiled() ? 0 : _tiff.ScanlineSize()
            )
        ];
        _tiles = _tiff.IsTiled()
            ? new TiffTileRows(_tiff, Width * _channels * _bytesOfChannel, Height)
            : null;
    }

    public int Width { get; }

    public int Height { get; }

    /// <summary>Opens the first picture of the file; null when it is no TIFF.</summary>
    /// <exception cref="DamagedPictureException">It is a TIFF of a kind that isn't read.</exception>
    public static TiffRaster? TryOpen(byte[] bytes)
    {
        return Guarded(() => OpenFile(bytes) is { } tiff ? new TiffRaster(tiff) : null);
    }

    /// <summary>Width and height of the first picture of the file; null when it is no TIFF.</summary>
    public static (int Width, int Height)? Head(byte[] bytes)
    {
        try
        {
            return Guarded(() =>
            {
                using var tiff = OpenFile(bytes);
                return tiff is null
                    ? ((int, int)?)null
                    : (
                        tiff.GetField(TiffTag.IMAGEWIDTH)?[0].ToInt() ?? 0,
                        tiff.GetField(TiffTag.IMAGELENGTH)?[0].ToInt() ?? 0
                    );
            });
        }
        catch (DamagedPictureException)
        {
            return null;
        }
    }

    public void ReadRows(byte[] rgba, int rows)
    {
        for (var i = 0; i < rows; i++, _next++)
        {
            if (!Guarded(ReadRow))
            {
                throw new DamagedPictureException(
                    FormattableString.Invariant(
                        $"The photograph is damaged or ends in mid-file, at row {_next}. Copy it again from the camera, then choose it again."
                    )
                );
            }

            Convert(rgba.AsSpan(i * Width * 4, Width * 4));
        }
    }

    public void Dispose() => _tiff.Dispose();

    private bool ReadRow() =>
        _tiles is { } tiles ? tiles.Read(_next, _row) : _tiff.ReadScanline(_row, _next);

    // The library reports a damaged picture by exceptions of many types.
    private static T Guarded<T>(Func<T> read)
    {
        try
        {
            return read();
        }
        catch (Exception damage)
            when (damage is not (DamagedPictureException or OutOfMemoryException))
        {
            throw new DamagedPictureException(
                "The photograph is damaged. Copy it again from the camera, then choose it again.",
                damage
            );
        }
    }

    private static Tiff? OpenFile(byte[] bytes)
    {
        Tiff.SetErrorHandler(Silence.Instance);
        return Tiff.ClientOpen("picture", "r", new MemoryStream(bytes, false), new TiffStream());
    }

    private int Tag(TiffTag tag, int otherwise) =>
        _tiff.GetFieldDefaulted(tag) is { Length: > 0 } found ? found[0].ToInt() : otherwise;

    private void RequireKnownKind()
    {
        var isKnown =
            _bytesOfChannel is 1 or 2
            && Tag(TiffTag.BITSPERSAMPLE, 1) is 8 or 16
            && Tag(TiffTag.PLANARCONFIG, 1) == (int)PlanarConfig.CONTIG
            && _photometric switch
            {
                Photometric.MINISBLACK or Photometric.MINISWHITE => _channels >= 1,
                Photometric.RGB => _channels >= 3,
                Photometric.PALETTE => _palette is not null && _bytesOfChannel == 1,
                _ => false,
            };
        if (!isKnown)
        {
            _tiff.Dispose();
            throw new DamagedPictureException(
                "This kind of TIFF isn't read: grey, colour or palette pictures of 8 or 16 bits a channel are. Save it so, or as JPEG or PNG, then choose it again."
            );
        }
    }

    // Samples of 16 bits are in the byte order of the machine, which is little-endian: the second byte is the larger part.
    private void Convert(Span<byte> rgba)
    {
        var (step, high) = (_channels * _bytesOfChannel, _bytesOfChannel - 1);
        for (var x = 0; x < Width; x++)
        {
            var from = (x * step) + high;
            var to = rgba.Slice(x * 4, 4);
            (to[0], to[1], to[2]) = _photometric switch
            {
                Photometric.RGB => (
                    _row[from],
                    _row[from + _bytesOfChannel],
                    _row[from + (2 * _bytesOfChannel)]
                ),
                Photometric.PALETTE => (
                    (byte)(_palette![0][_row[from]] >> 8),
                    (byte)(_palette[1][_row[from]] >> 8),
                    (byte)(_palette[2][_row[from]] >> 8)
                ),
                Photometric.MINISWHITE => Grey((byte)~_row[from]),
                _ => Grey(_row[from]),
            };
            to[3] = 255;
        }
    }

    private static (byte Red, byte Green, byte Blue) Grey(byte value) => (value, value, value);

    // What is wrong is told by the answers of each call; nothing goes to the standard error.
    private sealed class Silence : TiffErrorHandler
    {
        public static Silence Instance { get; } = new();

        public override void ErrorHandler(
            Tiff tif,
            string method,
            string format,
            params object[] args
        ) { }

        public override void ErrorHandlerExt(
            Tiff tif,
            object clientData,
            string method,
            string format,
            params object[] args
        ) { }

        public override void WarningHandler(
            Tiff tif,
            string method,
            string format,
            params object[] args
        ) { }

        public override void WarningHandlerExt(
            Tiff tif,
            object clientData,
            string method,
            string format,
            params object[] args
        ) { }
    }
}
