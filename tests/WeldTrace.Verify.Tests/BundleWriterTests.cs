using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using WeldTrace.Documents.Bundle;
using WeldTrace.Domain.Ledger;
using Xunit;

namespace WeldTrace.Verify.Tests;

public sealed class BundleWriterTests
{
    [Fact]
    public async Task WriteAsync_Vessel_VerifiesWithoutProblems()
    {
        var zip = await SampleBundle.WriteAsync(SampleBundle.Input());

        var report = BundleVerifier.Verify(new MemoryStream(zip));

        Assert.Empty(report.Problems);
        Assert.Empty(report.Notes);
        Assert.True(report.IsVerified);
        Assert.Equal("NR-0142", report.Manifest!.VesselSerial);
        Assert.Equal(7, report.Checkpoint!.TreeSize);
        Assert.Equal(5, report.Entries);
        Assert.Equal(SampleBundle.Key.Fingerprint, report.Fingerprint);
    }

    [Fact]
    public async Task WriteAsync_Vessel_HoldsTheseFiles()
    {
        var files = await BundleFiles.SampleAsync();

        Assert.Equal(
            [
                "VERIFY.md",
                $"attachments/{SampleBundle.Hash(SampleBundle.Certificate)}.bin",
                $"attachments/{SampleBundle.Hash(SampleBundle.Photo)}.jpg",
                "bundle.schema.json",
                "compliance.csv",
                "compliance.json",
                "history.epcis.jsonld",
                "ledger/0000000000.json",
                "ledger/0000000002.json",
                "ledger/0000000004.json",
                "ledger/0000000005.json",
                "ledger/0000000006.json",
                "ledger/checkpoint.json",
                "ledger/checkpoint.sig",
                "ledger/proofs.json",
                "logs/0198c0de-0000-7000-8000-000000000010.csv",
                "manifest.json",
                "manifest.sig",
                "records.prov.json",
                "records.schema.json",
                "records/leak-test/0198c0de-0000-7000-8000-000000000020.json",
                "records/section/0198c0de-0000-7000-8000-000000000030.json",
                "records/vessel/0198c0de-0000-7000-8000-00000000000a.json",
                "records/weld-run/0198c0de-0000-7000-8000-000000000010.json",
                "site-key.pem",
                "traveler.pdf",
            ],
            files.Keys.Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public async Task WriteAsync_SameInputTwice_DiffersOnlyInTheManifestSignature()
    {
        var input = SampleBundle.Input();

        var first = BundleFiles.Unpack(await SampleBundle.WriteAsync(input));
        var second = BundleFiles.Unpack(await SampleBundle.WriteAsync(input));

        Assert.Equal(first.Keys, second.Keys);
        var differing = first.Keys.Where(path => !first[path].SequenceEqual(second[path]));
        Assert.Equal([BundlePaths.ManifestSignature], differing);
    }

    [Fact]
    public async Task WriteAsync_AnyTimeOfDay_WritesTheSameZipUpToTheSignature()
    {
        var input = SampleBundle.Input();

        var first = await SampleBundle.WriteAsync(input);
        var second = await SampleBundle.WriteAsync(input);

        var signature = first.AsSpan().IndexOf("manifest.sig"u8);
        const int localHeader = 30;
        Assert.Equal(first[..(signature - localHeader)], second[..(signature - localHeader)]);
        using var zip = new ZipArchive(new MemoryStream(first));
        Assert.All(
            zip.Entries,
            e => Assert.Equal(new DateTime(1980, 1, 1), e.LastWriteTime.DateTime)
        );
    }

    [Fact]
    public async Task WriteAsync_StreamThatOnlyTakesAsyncWrites_Succeeds()
    {
        using var target = new AsyncOnlyStream();

        await HistoryBundleWriter.WriteAsync(
            SampleBundle.Input(),
            SampleBundle.Key,
            target,
            TestContext.Current.CancellationToken
        );

        Assert.True(BundleVerifier.Verify(new MemoryStream(target.ToArray())).IsVerified);
    }

    [Fact]
    public async Task WriteAsync_AttachmentThatIsNotItsHash_Throws()
    {
        var good = SampleBundle.Input();
        var photo = good.Attachments[0] with { Write = SampleBundle.Writing([1, 2, 3]) };

        await Assert.ThrowsAsync<InvalidDataException>(() =>
            SampleBundle.WriteAsync(good with { Attachments = [photo] })
        );
    }

    [Fact]
    public async Task WriteAsync_CheckpointOfAnotherKey_Throws()
    {
        using var other = SiteKey.Create();
        var input = SampleBundle.Input();
        var signed = other.Sign(input.Checkpoint.Checkpoint);

        await Assert.ThrowsAsync<ArgumentException>(() =>
            SampleBundle.WriteAsync(input with { Checkpoint = signed })
        );
    }

    [Fact]
    public async Task WriteAsync_Key_IsPublicOnly()
    {
        var files = await BundleFiles.SampleAsync();

        Assert.All(
            files.Values,
            bytes => Assert.DoesNotContain("PRIVATE", Encoding.Latin1.GetString(bytes))
        );
        Assert.Contains(
            SampleBundle.Key.Fingerprint,
            Encoding.UTF8.GetString(files[BundlePaths.Instructions])
        );
    }

    // What a stranger has: any program that knows ECDSA and SHA-256.
    [Fact]
    public async Task WriteAsync_Signatures_VerifyWithThePlatformAlone()
    {
        var files = await BundleFiles.SampleAsync();
        using var key = ECDsa.Create();
        key.ImportFromPem(Encoding.ASCII.GetString(files[BundlePaths.SiteKey]));

        foreach (var name in (string[])["manifest", "ledger/checkpoint"])
        {
            Assert.True(
                key.VerifyData(
                    files[name + ".json"],
                    files[name + ".sig"],
                    HashAlgorithmName.SHA256,
                    DSASignatureFormat.Rfc3279DerSequence
                )
            );
        }
    }
}
