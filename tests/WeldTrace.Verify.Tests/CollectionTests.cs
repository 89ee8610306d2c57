using System.Text;
using WeldTrace.Domain.Ledger;
using Xunit;

namespace WeldTrace.Verify.Tests;

/// <summary>Collections of histories: good ones and forged ones.</summary>
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

    private static void AssertProblem(CollectionReport report, ProblemKind kind, string path) =>
        Assert.Contains((kind, path), report.Problems.Select(p => (p.Kind, p.Path)));
}
