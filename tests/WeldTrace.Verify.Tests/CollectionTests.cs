using System.IO.Compression;
using System.Text;
using WeldTrace.Domain.Ledger;
using Xunit;

namespace WeldTrace.Verify.Tests;

/// <summary>Collections of histories: good ones, forged ones, and those made to harm whoever opens them.</summary>
public sealed class CollectionTests
{
    [Fact]
    public async Task Good_IsVerified_WithAReportOfEachVessel()
    {
        using var zip = new MemoryStream(await SampleCollection.WriteAsync());

        Assert.True(CollectionVerifier.IsCollection(zip));
        var report = CollectionVerifier.Verify(zip, SampleBundle.Key.Fingerprint);

        Assert.Empty(report.Problems);
        Assert.True(report.IsVerified);
        Assert.Equal(["NR-0142", "NR-0143"], report.Bundles.Select(b => b.VesselSerial));
        Assert.All(report.Bundles, b => Assert.Equal(5, b.Report.Entries));
        Assert.Equal(SampleCollection.Title, report.Contents!.Title);
    }

    [Fact]
    public async Task EachBundle_VerifiesByItself_AndIsNoCollection()
    {
        var files = await SampleCollection.OpenAsync();

        foreach (var path in (string[])[SampleCollection.First, SampleCollection.Second])
        {
            using var bundle = new MemoryStream(files[path]);
            Assert.False(CollectionVerifier.IsCollection(bundle));
            Assert.True(BundleVerifier.Verify(bundle).IsVerified);
        }
    }

    [Fact]
    public async Task OtherKeyNamed_IsNotVerified()
    {
        using var other = SiteKey.Create();
        using var zip = new MemoryStream(await SampleCollection.WriteAsync());

        var report = CollectionVerifier.Verify(zip, other.Fingerprint);

        Assert.False(report.IsVerified);
        AssertProblem(report, ProblemKind.Signature, CollectionPaths.SiteKey);
        Assert.All(report.Bundles, b => Assert.False(b.Report.IsVerified));
    }

    [Fact]
    public async Task ChangedBundle_IsNamed_AndWhatWasChangedInIt()
    {
        var files = await SampleCollection.OpenAsync();
        files[SampleCollection.Second] = Forged(files[SampleCollection.Second]);

        var report = files.Verify();

        AssertProblem(report, ProblemKind.Changed, SampleCollection.Second);
        Assert.True(report.Bundles[0].Report.IsVerified);
        var inside = Assert.Single(report.Bundles[1].Report.Problems);
        Assert.Equal((ProblemKind.Changed, "traveler.pdf"), (inside.Kind, inside.Path));
    }

    [Fact]
    public async Task ChangedBundle_WithAListThatFits_IsNotVerified()
    {
        var files = await SampleCollection.OpenAsync();
        files[SampleCollection.Second] = Forged(files[SampleCollection.Second]);
        files.RemakeList(SampleBundle.Key);

        var report = files.Verify();

        Assert.Empty(report.Problems);
        Assert.False(report.Bundles[1].Report.IsVerified);
        Assert.False(report.IsVerified);
    }

    [Fact]
    public async Task MissingBundle_IsNamed()
    {
        var files = await SampleCollection.OpenAsync();
        files.Remove(SampleCollection.First);

        var report = files.Verify();

        AssertProblem(report, ProblemKind.Removed, SampleCollection.First);
        Assert.False(report.IsVerified);
    }

    [Fact]
    public async Task MissingBundle_TakenFromTheListToo_IsToldByTheSignature()
    {
        using var forger = SiteKey.Create();
        var files = await SampleCollection.OpenAsync();
        files.Remove(SampleCollection.First);
        var list = CollectionContents.FromCanonicalBytes(files[CollectionPaths.Contents]);
        files[CollectionPaths.Contents] = (
            list with
            {
                Bundles = [list.Bundles[1]],
            }
        ).ToCanonicalBytes();

        AssertProblem(files.Verify(), ProblemKind.Signature, CollectionPaths.Contents);

        // Signed by a key of the forger's own, the list is not of those who signed the histories.
        files[CollectionPaths.SiteKey] = Encoding.ASCII.GetBytes(forger.PublicKey.Pem);
        var signed = list with { Bundles = [list.Bundles[1]] };
        files[CollectionPaths.Contents] = signed.ToCanonicalBytes();
        AssertRemadeBy(forger, files);
    }

    [Theory]
    [InlineData("bundles/0003-NR-0144.zip")]
    [InlineData("README.txt")]
    [InlineData("manifest.sig")]
    public async Task AddedFile_IsNamed(string path)
    {
        var files = await SampleCollection.OpenAsync();
        files[path] = files[SampleCollection.First];

        AssertProblem(files.Verify(), ProblemKind.Added, path);
    }

    [Theory]
    [InlineData(CollectionPaths.Contents)]
    [InlineData(CollectionPaths.ContentsSignature)]
    [InlineData(CollectionPaths.SiteKey)]
    [InlineData(CollectionPaths.Instructions)]
    public async Task MissingPaper_IsNamed(string path)
    {
        var files = await SampleCollection.OpenAsync();
        files.Remove(path);

        var report = files.Verify();

        AssertProblem(report, ProblemKind.Removed, path);
        Assert.False(report.IsVerified);
    }

    [Fact]
    public async Task ChangedInstructions_AreNamed()
    {
        var files = await SampleCollection.OpenAsync();
        files[CollectionPaths.Instructions][10] ^= 1;

        AssertProblem(files.Verify(), ProblemKind.Changed, CollectionPaths.Instructions);
    }

    [Fact]
    public async Task HistoryUnderAnotherVesselsName_IsNamed()
    {
        var files = await SampleCollection.OpenAsync();
        files.RemakeList(
            SampleBundle.Key,
            b => b with { VesselSerial = b.VesselSerial == "NR-0143" ? "NR-0199" : b.VesselSerial }
        );

        AssertProblem(files.Verify(), ProblemKind.Record, SampleCollection.Second);
    }

    [Fact]
    public async Task OneHistoryTwice_IsNoList()
    {
        var files = await SampleCollection.OpenAsync();
        var list = Encoding.UTF8.GetString(files[CollectionPaths.Contents]);
        files[CollectionPaths.Contents] = Encoding.UTF8.GetBytes(
            list.Replace("NR-0143\"", "NR-0142\"", StringComparison.Ordinal)
        );

        AssertProblem(files.Verify(), ProblemKind.Unreadable, CollectionPaths.Contents);
    }

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
        var bundle = BundleFiles.Unpack((await SampleCollection.OpenAsync())[SampleCollection.First]);
        bundle["traveler.pdf"] = new byte[60_000_000];
        var files = await SampleCollection.OpenAsync();
        files[SampleCollection.First] = bundle.Pack();

        var report = files.Verify();

        Assert.Equal(
            ProblemKind.Refused,
            Assert.Single(report.Bundles[0].Report.Problems).Kind
        );
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

    private static void AssertRemadeBy(SiteKey forger, SampleCollection files)
    {
        var list = CollectionContents.FromCanonicalBytes(files[CollectionPaths.Contents]);
        var key = files[CollectionPaths.SiteKey];
        list = list with
        {
            Papers =
            [
                .. list.Papers.Select(p =>
                    p.Path == CollectionPaths.SiteKey
                        ? p with
                        {
                            Bytes = key.Length,
                            Sha256 = SampleBundle.Hash(key),
                        }
                        : p
                ),
            ],
        };
        files[CollectionPaths.Contents] = list.ToCanonicalBytes();
        files[CollectionPaths.ContentsSignature] = forger.Sign(list.ToCanonicalBytes());

        var problem = Assert.Single(files.Verify().Problems);
        Assert.Equal(
            (ProblemKind.Signature, SampleCollection.Second),
            (problem.Kind, problem.Path)
        );
    }

    private static byte[] Forged(byte[] zip)
    {
        var bundle = BundleFiles.Unpack(zip);
        bundle["traveler.pdf"][0] ^= 1;
        return bundle.Pack();
    }

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
