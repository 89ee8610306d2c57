using System.IO.Compression;
using Xunit;

namespace WeldTrace.Verify.Tests;

/// <summary>Collections that are made to harm whoever opens them, or are damaged anywhere.</summary>
public sealed class HostileCollectionTests
{
    [Theory]
    [InlineData("../../etc/cron.d/x.zip")]
    [InlineData("/etc/passwd.zip")]
    [InlineData("bundles\\..\\x.zip")]
    public async Task PathThatLeadsOut_IsRefused(string path)
    {
        var files = await SampleCollection.OpenAsync();
        files[path] = [1];

        AssertRefused(files.Pack(), path);
    }

    [Fact]
    public async Task NameThatStandsTwice_IsRefused()
    {
        var files = await SampleCollection.OpenAsync();
        files["bundles/0002-nr-0143.zip"] = files[SampleCollection.First];

        AssertRefused(files.Pack(), "bundles/0002-nr-0143.zip");
    }

    [Fact]
    public async Task BundlePackedAgain_IsRefused_BeforeItIsUnpacked()
    {
        var files = await SampleCollection.OpenAsync();
        files[SampleCollection.First] = new byte[50_000_000];

        AssertRefused(files.Pack(CompressionLevel.Fastest), SampleCollection.First);
    }

    [Fact]
    public async Task BombInsideABundle_IsRefused_AndTheOtherVesselVerified()
    {
        var bundle = BundleFiles.Unpack(
            (await SampleCollection.OpenAsync())[SampleCollection.First]
        );
        bundle["traveler.pdf"] = new byte[60_000_000];
        var files = await SampleCollection.OpenAsync();
        files[SampleCollection.First] = bundle.Pack();

        var report = files.Verify();

        Assert.Equal(ProblemKind.Refused, Assert.Single(report.Bundles[0].Report.Problems).Kind);
        Assert.True(report.Bundles[1].Report.IsVerified);
        Assert.False(report.IsVerified);
    }

    [Fact]
    public async Task CutOrLengthened_IsRefused()
    {
        var zip = await SampleCollection.WriteAsync();

        foreach (var bad in (byte[][])[zip[..^1], zip[..(zip.Length / 2)], [.. zip, 0], []])
        {
            AssertRefused(bad, "");
        }
    }

    /// <summary>Whatever bit is turned: the reader neither falls nor says "verified".</summary>
    [Fact]
    public async Task AnyTurnedBit_IsToldWithoutAFall()
    {
        var zip = await SampleCollection.WriteAsync();
        var random = new Random(20261127);
        for (var turn = 0; turn < 150; turn++)
        {
            var bad = (byte[])zip.Clone();
            // Half of them where the directory and the list stand.
            var at = turn % 2 == 0 ? random.Next(zip.Length) : zip.Length - 1 - random.Next(3000);
            bad[at] ^= (byte)(1 << random.Next(8));

            var report = CollectionVerifier.Verify(new MemoryStream(bad));

            Assert.True(!report.IsVerified || IsSilent(zip, bad), $"Byte {at} of {zip.Length}.");
        }
    }

    // Times, rights and sums that the ZIP keeps beside the files are not the site's word; the files are.
    private static bool IsSilent(byte[] zip, byte[] other) =>
        BundleFiles
            .Unpack(zip)
            .Zip(BundleFiles.Unpack(other))
            .All(p => p.First.Key == p.Second.Key && p.First.Value.SequenceEqual(p.Second.Value));

    private static void AssertRefused(byte[] zip, string path)
    {
        var report = CollectionVerifier.Verify(new MemoryStream(zip));

        AssertProblem(report, ProblemKind.Refused, path);
        Assert.Empty(report.Bundles);
        Assert.False(report.IsVerified);
    }

    private static void AssertProblem(CollectionReport report, ProblemKind kind, string path) =>
        Assert.Contains((kind, path), report.Problems.Select(p => (p.Kind, p.Path)));
}
