using Xunit;

namespace WeldTrace.Verify.Tests;

/// <summary>The records that large ZIPs use (APPNOTE.TXT 4.3.14, 4.3.15, 4.5.3), in small ones.</summary>
public sealed class WideZipTests
{
    [Fact]
    public async Task Verify_WideEndRecords_AreRead()
    {
        var zip = RawZip.WithWideEnd(await SampleBundle.WriteAsync(SampleBundle.Input()));

        Assert.True(Verify(zip).IsVerified);
    }

    [Fact]
    public async Task Verify_WideEndRecordsWithAChange_AreRefused()
    {
        var good = await SampleBundle.WriteAsync(SampleBundle.Input());
        var zip = RawZip.WithWideEnd(good);
        foreach (var at in (int[])[76, 60, 52, 38, 20, 12])
        {
            var copy = (byte[])zip.Clone();
            copy[^(22 + at)] ^= 0x80;

            Assert.False(Verify(copy).IsVerified, $"{at} bytes before the end record");
        }
    }

    [Theory]
    [InlineData(4, false)]
    [InlineData(3, true)]
    public void Verify_WideLength_IsRead(long length, bool isDamaged)
    {
        var zip = RawZip.WithDirectoryField(
            RawZip.Of(("logs/a.csv", [1, 2, 3, 4])),
            RawZip.DirectoryLength,
            uint.MaxValue,
            4
        );

        var report = Verify(RawZip.WithDirectoryExtra(zip, 0x0001, BitConverter.GetBytes(length)));

        Assert.DoesNotContain(report.Problems, p => p.Kind == ProblemKind.Refused);
        Assert.Equal(isDamaged, report.Problems.Any(p => p.Kind == ProblemKind.Unreadable));
    }

    [Theory]
    [InlineData(0x0001, new byte[] { 1, 2, 3 })]
    [InlineData(0x0001, new byte[] { 0, 0, 0, 0, 0, 0, 0, 0x80 })]
    [InlineData(0x7075, new byte[] { 1, 0, 0, 0, 0, (byte)'/' })]
    public void Verify_HostileExtraField_IsRefused(int id, byte[] data)
    {
        var zip = RawZip.WithDirectoryField(
            RawZip.Of(("logs/a.csv", [1, 2, 3, 4])),
            RawZip.DirectoryLength,
            uint.MaxValue,
            4
        );

        var report = Verify(RawZip.WithDirectoryExtra(zip, (ushort)id, data));

        Assert.Single(report.Problems, p => p.Kind == ProblemKind.Refused);
    }

    private static BundleReport Verify(byte[] zip) => BundleVerifier.Verify(new MemoryStream(zip));
}
