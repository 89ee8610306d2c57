using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using ZstdSharp;

namespace WeldTrace.ProcessLogs.Tests;

/// <summary>Packed logs, recognised by their first bytes.</summary>
public sealed class PackedLogTests
{
    private static readonly byte[] Plain = Encoding
        .Unicode.GetPreamble()
        .Concat(Encoding.Unicode.GetBytes(new SmallLog().Text))
        .ToArray();

    public static TheoryData<LogPacking> Packings => new(LogPacking.Gzip, LogPacking.Zstd);

    [Theory]
    [MemberData(nameof(Packings))]
    public async Task ReadAsync_Packed_GivesTheSameSamplesAndTheHashOfTheFile(LogPacking packing)
    {
        byte[] file = Pack(packing, Plain);
        var packed = (await SmallLog.ReadAsync(file)).Log!;
        var plain = (await SmallLog.ReadAsync(Plain)).Log!;

        Assert.Equal(SmallLog.Values(plain, 1), SmallLog.Values(packed, 1));
        Assert.Equal(plain.Header.CsvSha256, packed.Header.CsvSha256);
        Assert.Equal(packing, packed.Header.Dialect.Packing);
        Assert.Equal(
            (Convert.ToHexStringLower(SHA256.HashData(file)), (long)file.Length),
            (packed.Header.OriginalSha256, packed.Header.OriginalLengthBytes)
        );
        Assert.False(packed.Header.CsvIsOriginal);
    }

    [Theory]
    [MemberData(nameof(Packings))]
    public async Task ReadAsync_CutOff_IsRefused(LogPacking packing)
    {
        var text = Enumerable
            .Range(0, 60_000)
            .Select(i => $"{i * 0.1:F1},{i * 7919 % 9973 / 1000.0:F3},200.0,-3.0000\n");
        var file = Pack(
            packing,
            Encoding.UTF8.GetBytes(SmallLog.Header + "\n" + string.Concat(text))
        );
        var whole = await SmallLog.ReadAsync(file);
        Assert.Equal(60_000, whole.Log!.Header.SampleCount);

        foreach (var kept in new[] { 15, file.Length / 3, file.Length - 9, file.Length - 1 })
        {
            var result = await SmallLog.ReadAsync(file[..kept]);
            Assert.Null(result.Log);
            Assert.Equal(LogProblemCode.DamagedArchive, Assert.Single(result.Problems).Code);
        }
    }

    [Theory]
    [MemberData(nameof(Packings))]
    public async Task ReadAsync_SmallArchiveOfAHugeText_StopsAtTheLimit(LogPacking packing)
    {
        var file = Pack(
            packing,
            new byte[40_000_000]
                .Select(_ => (byte)'1')
                .ToArray()
        );
        var options = new LogReadOptions { LengthLimitBytes = 5_000_000 };
        var before = GC.GetAllocatedBytesForCurrentThread();
        var result = await ProcessLogReader.ReadAsync(
            new MemoryStream(file),
            SmallLog.Mapping,
            options,
            SmallLog.Cancellation
        );

        Assert.NotEmpty(result.Problems);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 5_000_000);
    }

    [Fact]
    public async Task ReadAsync_ArchiveInAnArchive_IsRefused()
    {
        var file = Pack(LogPacking.Zstd, Pack(LogPacking.Gzip, Plain));
        var result = await SmallLog.ReadAsync(file);
        Assert.Equal(LogProblemCode.BinaryContent, Assert.Single(result.Problems).Code);
    }

    [Theory]
    [MemberData(nameof(Packings))]
    public async Task Preview_Packed_ShowsTheRows(LogPacking packing)
    {
        var result = await LogPreview.ReadAsync(
            new MemoryStream(Pack(packing, Plain)),
            null,
            SmallLog.Cancellation
        );
        Assert.Equal(20, result.Preview!.Rows.Count);
        Assert.Equal(packing, result.Preview.Dialect.Packing);
    }

    private static byte[] Pack(LogPacking packing, byte[] plain)
    {
        using var file = new MemoryStream();
        using (
            Stream packer =
                packing == LogPacking.Gzip
                    ? new GZipStream(file, CompressionLevel.Fastest, leaveOpen: true)
                    : new CompressionStream(file, leaveOpen: true)
        )
        {
            packer.Write(plain);
        }

        return file.ToArray();
    }
}
