using System.Buffers.Binary;
using System.IO.Compression;

namespace WeldTrace.Web.Pictures;

/// <summary>A PNG of 8 or 16 bits a channel, not interlaced, row by row; the library in use decodes a PNG only as a whole.</summary>
internal sealed class PngRaster : IRaster
{
    private const int FirstChunk = 8;
    private readonly ZLibStream _rows;
    private readonly int _channels;
    private readonly int _bytesOfChannel;
    private readonly byte[]? _palette;
    private byte[] _before;
    private byte[] _now;
    private int _row;

    private PngRaster(byte[] bytes, int width, int height, int channels, int depth, byte[]? palette)
    {
        (Width, Height, _channels, _bytesOfChannel, _palette) = (
            width,
            height,
            channels,
            depth / 8,
            palette
        );
        _rows = new ZLibStream(new PngData(bytes), CompressionMode.Decompress);
        _before = new byte[Stride];
        _now = new byte[Stride];
    }

    public int Width { get; }

    public int Height { get; }

    private int Stride => Width * _channels * _bytesOfChannel;

    /// <summary>The rows of a PNG; null when it is of a kind that has to be decoded as a whole.</summary>
    public static PngRaster? TryOpen(byte[] bytes)
    {
        var head = bytes.AsSpan(FirstChunk + 8);
        var (depth, colour, interlaced) = (head[8], head[9], head[12] != 0);
        var channels = colour switch
        {
            0 or 3 => 1,
            4 => 2,
            2 => 3,
            6 => 4,
            _ => 0,
        };
        var palette = colour == 3 ? PngData.Find(bytes, "PLTE"u8) : null;
        var isSimple = channels > 0 && !interlaced && (depth == 8 || (depth == 16 && colour != 3));
        return isSimple && (colour != 3 || palette is not null)
            ? new PngRaster(
                bytes,
                BinaryPrimitives.ReadInt32BigEndian(head),
                BinaryPrimitives.ReadInt32BigEndian(head[4..]),
                channels,
                depth,
                palette
            )
            : null;
    }

    public void ReadRows(byte[] rgba, int rows)
    {
        for (var i = 0; i < rows; i++, _row++)
        {
            ReadRow();
            Convert(_now, rgba.AsSpan(i * Width * 4, Width * 4));
            (_before, _now) = (_now, _before);
        }
    }

    public void Dispose() => _rows.Dispose();

    private void ReadRow()
    {
        try
        {
            var filter = _rows.ReadByte();
            _rows.ReadExactly(_now);
            Unfilter(filter);
        }
        catch (Exception damage) when (damage is InvalidDataException or EndOfStreamException)
        {
            throw new DamagedPictureException(
                FormattableString.Invariant(
                    $"The photograph is damaged or ends in mid-file, at row {_row}. Copy it again from the camera, then choose it again."
                ),
                damage
            );
        }
    }

    private void Unfilter(int filter)
    {
        var step = _channels * _bytesOfChannel;
        var now = _now.AsSpan();
        var before = _before.AsSpan();
        switch (filter)
        {
            case 0:
                break;
            case 1:
                for (var i = step; i < now.Length; i++)
                {
                    now[i] += now[i - step];
                }

                break;
            case 2:
                for (var i = 0; i < now.Length; i++)
                {
                    now[i] += before[i];
                }

                break;
            case 3:
                for (var i = 0; i < now.Length; i++)
                {
                    now[i] += (byte)(((i < step ? 0 : now[i - step]) + before[i]) >> 1);
                }

                break;
            case 4:
                for (var i = 0; i < now.Length; i++)
                {
                    now[i] +=
                        i < step ? before[i] : Paeth(now[i - step], before[i], before[i - step]);
                }

                break;
            default:
                throw new InvalidDataException("Unknown filter.");
        }
    }

    private static byte Paeth(int left, int above, int corner)
    {
        var guess = left + above - corner;
        var (toLeft, toAbove, toCorner) = (
            Math.Abs(guess - left),
            Math.Abs(guess - above),
            Math.Abs(guess - corner)
        );
        return (byte)(
            toLeft <= toAbove && toLeft <= toCorner ? left
            : toAbove <= toCorner ? above
            : corner
        );
    }

    private void Convert(ReadOnlySpan<byte> row, Span<byte> rgba)
    {
        var step = _channels * _bytesOfChannel;
        for (var x = 0; x < Width; x++)
        {
            var pixel = row.Slice(x * step, step);
            var to = rgba.Slice(x * 4, 4);
            if (_palette is not null)
            {
                var at = pixel[0] * 3;
                (to[0], to[1], to[2]) =
                    at + 2 < _palette.Length
                        ? (_palette[at], _palette[at + 1], _palette[at + 2])
                        : ((byte)0, (byte)0, (byte)0);
            }
            else
            {
                var (green, blue) = _channels < 3 ? (0, 0) : (_bytesOfChannel, 2 * _bytesOfChannel);
                (to[0], to[1], to[2]) = (pixel[0], pixel[green], pixel[blue]);
            }

            to[3] = 255;
        }
    }
}
