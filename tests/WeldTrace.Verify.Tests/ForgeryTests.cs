using System.Text;
using WeldTrace.Documents.Bundle;
using WeldTrace.Domain.Ledger;
using Xunit;

namespace WeldTrace.Verify.Tests;

/// <summary>Changes by someone who makes the rest of the bundle fit as well as he can.</summary>
public sealed class ForgeryTests
{
    private const string Run = "records/weld-run/0198c0de-0000-7000-8000-000000000010.json";

    [Theory]
    [InlineData("traveler.pdf")]
    [InlineData(Run)]
    [InlineData("ledger/0000000006.json")]
    public async Task Verify_ManifestRemadeWithoutKey_NamesTheManifest(string path)
    {
        var files = await BundleFiles.SampleAsync();
        files[path] = [.. files[path], (byte)' '];
        files.RemakeManifest();

        var report = files.Verify();

        Assert.Contains(
            report.Problems,
            p => p is { Kind: ProblemKind.Signature, Path: BundlePaths.Manifest }
        );
    }

    [Theory]
    [InlineData(BundlePaths.Lineage, "#v2", "#v7")]
    [InlineData(
        BundlePaths.Lineage,
        "0198c0de-0000-7000-8000-000000000010#act1",
        "0198c0de-0000-7000-8000-000000000019#act1"
    )]
    [InlineData(
        BundlePaths.Compliance,
        "0198c0de-0000-7000-8000-000000000020",
        "0198c0de-0000-7000-8000-000000000029"
    )]
    public async Task Verify_FileNamesWhatIsNotThere_AndIsSigned_IsMissing(
        string path,
        string name,
        string other
    )
    {
        var files = await BundleFiles.SampleAsync();
        Replace(files, path, name, other);
        files.RemakeManifest();
        files.Sign(SampleBundle.Key);

        var problem = Assert.Single(files.Verify().Problems);

        Assert.Equal((ProblemKind.Missing, path), (problem.Kind, problem.Path));
        Assert.Contains(other, problem.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(BundlePaths.Events)]
    [InlineData(BundlePaths.Lineage)]
    [InlineData(BundlePaths.BundleSchema)]
    [InlineData(BundlePaths.Compliance)]
    [InlineData(BundlePaths.ComplianceTable)]
    public async Task Verify_FileOfThisVersionLeftOutAndSigned_IsRemoved(string path)
    {
        var files = await BundleFiles.SampleAsync();
        files.Remove(path);
        files.RemakeManifest();
        files.Sign(SampleBundle.Key);

        var problem = Assert.Single(files.Verify().Problems);

        Assert.Equal((ProblemKind.Removed, path), (problem.Kind, problem.Path));
    }

    [Theory]
    [InlineData(1, BundlePaths.Events, BundlePaths.Lineage)]
    [InlineData(2)]
    public async Task Verify_BundleOfAnEarlierVersion_NeedsNoFilesThatCameLater(
        int version,
        params string[] ofVersion2
    )
    {
        string[] ofVersion3 =
        [
            BundlePaths.BundleSchema,
            BundlePaths.Compliance,
            BundlePaths.ComplianceTable,
        ];
        var files = await BundleFiles.SampleAsync();
        foreach (var path in ofVersion2.Concat(ofVersion3))
        {
            files.Remove(path);
        }

        Replace(files, BundlePaths.Manifest, "\"version\":3", $"\"version\":{version}");
        files.RemakeManifest();
        files.Sign(SampleBundle.Key);

        Assert.True(files.Verify().IsVerified);
    }

    [Fact]
    public async Task Verify_RecordChangedAndManifestRemade_NamesTheRecordToo()
    {
        var files = await BundleFiles.SampleAsync();
        Replace(files, Run, "1.26", "1.06");
        files.RemakeManifest();

        var report = files.Verify();

        Assert.Contains(report.Problems, p => p is { Kind: ProblemKind.Record, Path: Run });
    }

    [Fact]
    public async Task Verify_SignedWithAnotherKeyButOldCheckpoint_NamesTheCheckpointSignature()
    {
        using var other = SiteKey.Create();
        var files = await BundleFiles.SampleAsync();
        files[BundlePaths.SiteKey] = Encoding.ASCII.GetBytes(other.PublicKey.Pem);
        files.RemakeManifest();
        files.Sign(other);

        var problem = Assert.Single(files.Verify().Problems);

        Assert.Equal(
            (ProblemKind.Signature, BundlePaths.CheckpointSignature),
            (problem.Kind, problem.Path)
        );
    }

    [Fact]
    public async Task Verify_WholeBundleOfAnotherKey_IsFoundWhenTheKeyIsNamed()
    {
        using var other = SiteKey.Create();
        var input = SampleBundle.Input();
        var forged = input with { Checkpoint = other.Sign(input.Checkpoint.Checkpoint) };
        using var zip = new MemoryStream();
        await HistoryBundleWriter.WriteAsync(
            forged,
            other,
            zip,
            TestContext.Current.CancellationToken
        );

        Assert.True(BundleVerifier.Verify(zip, other.Fingerprint).IsVerified);
        var problem = Assert.Single(
            BundleVerifier.Verify(zip, SampleBundle.Key.Fingerprint).Problems
        );
        Assert.Equal((ProblemKind.Signature, BundlePaths.SiteKey), (problem.Kind, problem.Path));
    }

    // Even the site itself cannot change an entry that its checkpoint covers.
    [Fact]
    public async Task Verify_EntryChangedAndAllSignedByTheSite_NamesTheEntry()
    {
        var files = await BundleFiles.SampleAsync();
        Replace(files, "ledger/0000000004.json", "1.26", "1.06");
        Replace(files, Run, "1.26", "1.06");
        files.RemakeManifest();
        files.Sign(SampleBundle.Key);

        var problem = Assert.Single(files.Verify().Problems);

        Assert.Equal((ProblemKind.Proof, "ledger/0000000004.json"), (problem.Kind, problem.Path));
    }

    [Fact]
    public async Task Verify_NewestEntryLeftOut_NamesTheEntry()
    {
        var files = await BundleFiles.SampleAsync();
        files.Remove("ledger/0000000004.json");
        files.RemakeManifest();
        files.Sign(SampleBundle.Key);

        var problem = Assert.Single(files.Verify().Problems);

        Assert.Equal((ProblemKind.Missing, "ledger/0000000004.json"), (problem.Kind, problem.Path));
    }

    public static TheoryData<string, string> LeftOut =>
        new()
        {
            { Run, Run },
            {
                "logs/0198c0de-0000-7000-8000-000000000010.csv",
                "logs/" + SampleBundle.Hash(SampleBundle.Csv)
            },
            {
                $"attachments/{SampleBundle.Hash(SampleBundle.Photo)}.jpg",
                "attachments/" + SampleBundle.Hash(SampleBundle.Photo)
            },
        };

    [Theory]
    [MemberData(nameof(LeftOut))]
    public async Task Verify_NamedFileLeftOutAndSigned_IsMissing(string path, string named)
    {
        var files = await BundleFiles.SampleAsync();
        files.Remove(path);
        files.RemakeManifest();
        files.Sign(SampleBundle.Key);

        var problem = Assert.Single(files.Verify().Problems);

        Assert.Equal((ProblemKind.Missing, named), (problem.Kind, problem.Path));
    }

    [Theory]
    [InlineData("attachments/0000000000000000000000000000000000000000000000000000000000000000.jpg")]
    [InlineData("logs/0198c0de-0000-7000-8000-0000000000ff.csv")]
    public async Task Verify_FileThatNoEntryNames_IsNamedThoughSigned(string path)
    {
        var files = await BundleFiles.SampleAsync();
        files.Add(path, [1, 2, 3]);
        files.RemakeManifest();
        files.Sign(SampleBundle.Key);

        var problem = Assert.Single(files.Verify().Problems);

        Assert.Equal((ProblemKind.Unnamed, path), (problem.Kind, problem.Path));
    }

    [Fact]
    public async Task Verify_RecordWithoutEntry_IsNamedThoughSigned()
    {
        const string path = "records/leak-test/0198c0de-0000-7000-8000-0000000000ff.json";
        var files = await BundleFiles.SampleAsync();
        files.Add(path, "{}"u8.ToArray());
        files.RemakeManifest();
        files.Sign(SampleBundle.Key);

        var problem = Assert.Single(files.Verify().Problems);

        Assert.Equal((ProblemKind.Record, path), (problem.Kind, problem.Path));
    }

    [Fact]
    public async Task Verify_OldVersionOfARecord_IsNamedThoughSigned()
    {
        var files = await BundleFiles.SampleAsync();
        Replace(files, Run, "1.26", "1.25");
        files.RemakeManifest();
        files.Sign(SampleBundle.Key);

        var problem = Assert.Single(files.Verify().Problems);

        Assert.Equal((ProblemKind.Record, Run), (problem.Kind, problem.Path));
        Assert.Contains("ledger/0000000004.json", problem.Message);
    }

    [Fact]
    public async Task Verify_ProofsOfOtherEntries_NameEveryEntry()
    {
        var input = SampleBundle.Input();
        var moved = input
            .Entries.Select((entry, i) => entry with { Path = input.Entries[(i + 1) % 5].Path })
            .ToList();

        var zip = await SampleBundle.WriteAsync(input with { Entries = moved });

        var report = BundleVerifier.Verify(new MemoryStream(zip));
        Assert.All(report.Problems, p => Assert.Equal(ProblemKind.Proof, p.Kind));
        Assert.Equal(5, report.Problems.Count);
    }

    [Fact]
    public async Task Verify_CheckpointOfAnotherSite_IsNamed()
    {
        var input = SampleBundle.Input();
        var signed = SampleBundle.Key.Sign(
            input.Checkpoint.Checkpoint with
            {
                SiteName = "Elsewhere",
            }
        );

        var zip = await SampleBundle.WriteAsync(input with { Checkpoint = signed });

        var problem = Assert.Single(BundleVerifier.Verify(new MemoryStream(zip)).Problems);
        Assert.Equal(BundlePaths.Checkpoint, problem.Path);
    }

    private static void Replace(BundleFiles files, string path, string part, string replacement)
    {
        var text = Encoding.UTF8.GetString(files[path]);
        Assert.Contains(part, text);
        files[path] = Encoding.UTF8.GetBytes(
            text.Replace(part, replacement, StringComparison.Ordinal)
        );
    }
}
