using WeldTrace.Documents.Layout;
using WeldTrace.Documents.Tests.Samples;
using Xunit;

namespace WeldTrace.Documents.Tests.Layout;

public sealed class PictureHeaderTests
{
    [Fact]
    public void TryRead_Png_GivesItsSize() =>
        Assert.Equal(
            new PictureHeader(7, 5, 1, IsPng: true),
            PictureHeader.TryRead(SamplePictures.Png(7, 5, (_, _) => 9))
        );

    [Fact]
    public void TryRead_Jpeg_GivesItsSize() =>
        Assert.Equal(
            new PictureHeader(24, 12, 1, IsPng: false),
            PictureHeader.TryRead(SamplePictures.Jpeg())
        );

    [Theory]
    [InlineData(1, 24, 12)]
    [InlineData(3, 24, 12)]
    [InlineData(6, 12, 24)]
    [InlineData(8, 12, 24)]
    public void TryRead_JpegWithOrientation_StandsUpright(byte orientation, int width, int height)
    {
        var header = PictureHeader.TryRead(SamplePictures.Jpeg(orientation));

        Assert.NotNull(header);
        Assert.Equal(orientation, header.Orientation);
        Assert.Equal((width, height), (header.UprightWidth, header.UprightHeight));
    }

    [Fact]
    public void TryRead_EveryCutOfAJpeg_NeverThrows()
    {
        var whole = SamplePictures.Jpeg(6);
        for (var length = 0; length < whole.Length; length++)
        {
            var header = PictureHeader.TryRead(whole.AsSpan(0, length));
            Assert.True(header is null || header.Width == 24);
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData("%PDF-1.7 renamed")]
    [InlineData("GIF89a............................")]
    public void TryRead_AnotherFile_IsNull(string content) =>
        Assert.Null(PictureHeader.TryRead(System.Text.Encoding.ASCII.GetBytes(content)));
}
