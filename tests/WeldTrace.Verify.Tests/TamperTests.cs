using WeldTrace.Domain.Ledger;
using Xunit;

namespace WeldTrace.Verify.Tests;

public sealed class TamperTests
{
    private static readonly Task<BundleFiles> Files = BundleFiles.SampleAsync();

    public static async Task<IEnumerable<TheoryDataRow<string>>> Paths() =>
        (await Files).Keys.Select(path => new TheoryDataRow<string>(path));

    [Theory]
    [MemberData(nameof(Paths), DisableDiscoveryEnumeration = true)]
    public async Task Verify_OneByteChangedAnywhere_NamesExactlyThatFile(string path)
    {
        var length = (await Files)[path].Length;
        for (var at = 0; at < length; at += Math.Max(1, length / 16))
        {
            var files = await BundleFiles.SampleAsync();
            files[path][at] ^= 0x01;

            var report = files.Verify();

            Assert.False(report.IsVerified);
            Assert.True(Names(report, path), $"byte {at}: {string.Join("; ", report.Problems)}");
            if (path is not (BundlePaths.Manifest or BundlePaths.ManifestSignature))
            {
                Assert.Equal([path], Touched(report));
            }
        }
    }

    [Theory]
    [MemberData(nameof(Paths), DisableDiscoveryEnumeration = true)]
    public async Task Verify_FileRemoved_NamesExactlyThatFile(string path)
    {
        var files = await BundleFiles.SampleAsync();
        files.Remove(path);

        var report = files.Verify();

        Assert.False(report.IsVerified);
        var removed = Assert.Single(report.Problems, p => p.Kind == ProblemKind.Removed);
        Assert.Equal(path, removed.Path);
        Assert.Equal([path], Touched(report));
    }

    [Theory]
    [MemberData(nameof(Paths), DisableDiscoveryEnumeration = true)]
    public async Task Verify_FileEmptied_NamesThatFile(string path)
    {
        var files = await BundleFiles.SampleAsync();
        files[path] = [];

        var report = files.Verify();

        Assert.False(report.IsVerified);
        Assert.True(Names(report, path), string.Join("; ", report.Problems));
    }

    [Theory]
    [InlineData("note.txt")]
    [InlineData("records/weld-run/0198c0de-0000-7000-8000-0000000000ff.json")]
    [InlineData("ledger/0000000001.json")]
    [InlineData("ledger/extra.json")]
    [InlineData("logs/0198c0de-0000-7000-8000-0000000000ff.csv")]
    [InlineData("attachments/photo.jpg")]
    public async Task Verify_FileAdded_NamesExactlyThatFile(string path)
    {
        var files = await BundleFiles.SampleAsync();
        files.Add(path, "{}"u8.ToArray());

        var report = files.Verify();

        var added = Assert.Single(report.Problems, p => p.Kind == ProblemKind.Added);
        Assert.Equal(path, added.Path);
        Assert.All(report.Problems, problem => Assert.Equal(path, problem.Path));
    }

    [Theory]
    [InlineData("ledger/0000000002.json", "ledger/0000000004.json")]
    [InlineData("traveler.pdf", "VERIFY.md")]
    [InlineData("manifest.sig", "ledger/checkpoint.sig")]
    [InlineData(
        "records/section/0198c0de-0000-7000-8000-000000000030.json",
        "records/leak-test/0198c0de-0000-7000-8000-000000000020.json"
    )]
    public async Task Verify_TwoFilesSwapped_NamesBoth(string first, string second)
    {
        var files = await BundleFiles.SampleAsync();
        (files[first], files[second]) = (files[second], files[first]);

        var report = files.Verify();

        Assert.True(Names(report, first), string.Join("; ", report.Problems));
        Assert.True(Names(report, second), string.Join("; ", report.Problems));
    }

    [Fact]
    public async Task Verify_ManyChanges_NamesEveryOne()
    {
        var files = await BundleFiles.SampleAsync();
        files["traveler.pdf"][3] ^= 1;
        files["ledger/0000000005.json"][20] ^= 1;
        files.Remove("logs/0198c0de-0000-7000-8000-000000000010.csv");
        files.Add("note.txt", [1]);

        var report = files.Verify();

        Assert.Equal(
            [
                "ledger/0000000005.json",
                "logs/0198c0de-0000-7000-8000-000000000010.csv",
                "note.txt",
                "traveler.pdf",
            ],
            Touched(report).Order(StringComparer.Ordinal)
        );
    }

    private static bool Names(BundleReport report, string path) =>
        report.Problems.Any(problem =>
            problem.Path == path || problem.Message.Contains(path, StringComparison.Ordinal)
        );

    // What is said to be changed, removed or added; not what follows from it.
    private static IEnumerable<string> Touched(BundleReport report) =>
        report
            .Problems.Where(problem =>
                problem.Kind is not (ProblemKind.Proof or ProblemKind.Signature)
            )
            .Select(problem => problem.Path)
            .Distinct();
}
