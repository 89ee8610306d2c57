using BitMiracle.LibTiff.Classic;

namespace WeldTrace.Web.Tests.Pictures;

/// <summary>Pictures of known pixels as TIFF, in strips or tiles.</summary>
internal static class SampleTiff
{
    public static byte[] Make(int width, int height, bool isTiled, int bits)
    {
        using var stream = new MemoryStream();
        using (var tiff = Tiff.ClientOpen("t", "w", stream, new KeptOpen()))
        {
            tiff.SetField(TiffTag.IMAGEWIDTH, width);
            tiff.SetField(TiffTag.IMAGELENGTH, height);
            tiff.SetField(TiffTag.SAMPLESPERPIXEL, 3);
            tiff.SetField(TiffTag.BITSPERSAMPLE, bits);
            tiff.SetField(TiffTag.PHOTOMETRIC, Photometric.RGB);
            tiff.SetField(TiffTag.PLANARCONFIG, PlanarConfig.CONTIG);
            tiff.SetField(TiffTag.COMPRESSION, Compression.LZW);
            if (isTiled)
            {
                WriteTiles(tiff, width, height);
            }
            else
            {
                tiff.SetField(TiffTag.ROWSPERSTRIP, 16);
                for (var y = 0; y < height; y++)
                {
                    tiff.WriteScanline(Row(0, width, y, width, height, bits), y);
                }
            }
        }

        return stream.ToArray();
    }

    private static void WriteTiles(Tiff tiff, int width, int height)
    {
        const int Side = 128;
        tiff.SetField(TiffTag.TILEWIDTH, Side);
        tiff.SetField(TiffTag.TILELENGTH, Side);
        for (var top = 0; top < height; top += Side)
        {
            for (var left = 0; left < width; left += Side)
            {
                byte[] tile =
                [
                    .. Enumerable
                        .Range(top, Side)
                        .SelectMany(y => Row(left, left + Side, y, width, height, 8)),
                ];
                tiff.WriteTile(tile, left, top, 0, 0);
            }
        }
    }

    private static byte[] Row(int from, int to, int y, int width, int height, int bits) =>
        [
            .. Enumerable
                .Range(from, to - from)
                .Select(x =>
                    SamplePictures.ColourAt(
                        Math.Min(x, width - 1),
                        Math.Min(y, height - 1),
                        width,
                        height
                    )
                )
                .SelectMany(c => new[] { c.Red, c.Green, c.Blue })
                .SelectMany(v => bits == 8 ? [v] : new byte[] { 0x55, v }),
        ];

    private sealed class KeptOpen : TiffStream
    {
        public override void Close(object clientData) { }
    }
}
