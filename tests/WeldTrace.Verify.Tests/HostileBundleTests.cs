using System.Text;
using Xunit;

namespace WeldTrace.Verify.Tests;

public sealed class HostileBundleTests
{
    [Theory]
    [InlineData("../climb.txt")]
    [InlineData("records/../../climb.txt")]
    [InlineData("/absolute.txt")]
    [InlineData("back\\slash.txt")]
    [InlineData("..\\climb.txt")]
    [InlineData("C:/drive.txt")]
    [InlineData("./here.txt")]
    [InlineData("two//slashes.txt")]
    [InlineData("line\nend.txt")]
    [InlineData("escape\u001b[31m.txt")]
    [InlineData("right\u202eleft.txt")]
    [InlineData("../folder/")]
    public void Verify_PathThatCouldDoHarm_IsRefusedByName(string path)
    {
        var report = Verify(RawZip.Of(("traveler.pdf", [1]), (path, [])));

        AssertRefused(report, path);
    }

    [Theory]
    [InlineData("traveler.pdf", "traveler.pdf")]
    [InlineData("traveler.pdf", "TRAVELER.PDF")]
    [InlineData("logs", "logs/")]
    public void Verify_NameTwice_IsRefusedByName(string first, string second)
    {
        var report = Verify(RawZip.Of((first, [1]), (second, [])));

        AssertRefused(report, second);
    }

    [Theory]
    [InlineData(0xA1FF)]
    [InlineData(0x61FF)]
    [InlineData(0x11FF)]
    [InlineData(0x41FF)]
    public void Verify_LinkOrSpecialFile_IsRefusedByName(uint mode)
    {
        var zip = RawZip.WithDirectoryField(
            RawZip.Of(("link", "/etc/passwd"u8.ToArray())),
            RawZip.DirectoryAttributes,
            mode << 16,
            4
        );

        AssertRefused(Verify(zip), "link");
    }

    [Fact]
    public void Verify_EncryptedFile_IsRefusedByName()
    {
        var zip = RawZip.WithDirectoryField(
            RawZip.Of(("manifest.json", [1])),
            RawZip.DirectoryFlags,
            1,
            2
        );

        AssertRefused(Verify(zip), "manifest.json");
    }

    [Fact]
    public void Verify_FolderWithBytes_IsRefusedByName() =>
        AssertRefused(
            Verify(RawZip.Renamed(RawZip.Of(("logs/x", [1, 2, 3])), "logs/x", "logsx/")),
            "logsx/"
        );

    [Fact]
    public void Verify_FileThatUnpacksTooFar_IsRefusedByName()
    {
        var zip = RawZip.Of(("logs/bomb.csv", new byte[2_000_000]));
        var limits = new BundleLimits { RatioFrom = 1_000_000 };

        AssertRefused(Verify(zip, limits), "logs/bomb.csv");
    }

    [Fact]
    public void Verify_HonestFileOfThatSize_IsNotABomb()
    {
        var bytes = new byte[2_000_000];
        new Random(1).NextBytes(bytes);
        var limits = new BundleLimits { RatioFrom = 1_000_000 };

        var report = Verify(RawZip.Of(("logs/long.csv", bytes)), limits);

        Assert.DoesNotContain(report.Problems, p => p.Kind == ProblemKind.Refused);
    }

    [Fact]
    public void Verify_FileOverTheLimit_IsRefusedByName() =>
        AssertRefused(
            Verify(RawZip.Of(("a.csv", new byte[1001])), new BundleLimits { FileBytes = 1000 }),
            "a.csv"
        );

    [Fact]
    public void Verify_DocumentOverTheLimit_IsRefusedByName() =>
        AssertRefused(
            Verify(
                RawZip.Of(("manifest.json", new byte[1001])),
                new BundleLimits { DocumentBytes = 1000 }
            ),
            "manifest.json"
        );

    [Fact]
    public void Verify_FilesTogetherOverTheLimit_AreRefused() =>
        AssertRefused(
            Verify(
                RawZip.Of(("a.csv", new byte[600]), ("b.csv", new byte[600])),
                new BundleLimits { TotalBytes = 1000 }
            ),
            "b.csv"
        );

    [Fact]
    public void Verify_TooManyFiles_IsRefused()
    {
        var files = Enumerable.Range(0, 11).Select(i => ($"f{i}", Array.Empty<byte>()));

        AssertRefused(Verify(RawZip.Of([.. files]), new BundleLimits { Files = 10 }), "");
    }

    // The ZIP says 5 bytes; a reader that believes it would not see the rest.
    [Theory]
    [InlineData(5u)]
    [InlineData(5_000_000u)]
    public void Verify_LyingLength_IsNamed(uint length)
    {
        var zip = RawZip.WithDirectoryField(
            RawZip.Of(("traveler.pdf", new byte[2000])),
            RawZip.DirectoryLength,
            length,
            4
        );

        var report = Verify(zip);

        Assert.Contains(
            report.Problems,
            p => p is { Kind: ProblemKind.Unreadable, Path: "traveler.pdf" }
        );
    }

    [Theory]
    [InlineData(1_000_000u)]
    [InlineData(3u)]
    [InlineData(0u)]
    public void Verify_LyingPackedLength_IsRefused(uint length)
    {
        var zip = RawZip.WithDirectoryField(
            RawZip.Of(("traveler.pdf", new byte[2000])),
            RawZip.DirectoryPackedLength,
            length,
            4
        );

        Assert.Single(Verify(zip).Problems, p => p.Kind == ProblemKind.Refused);
    }

    // Both directory records point at the one file, as an overlapping zip bomb does.
    [Fact]
    public void Verify_FilesThatOverlap_AreRefused()
    {
        var zip = RawZip.WithDirectoryField(
            RawZip.Of(("a.csv", [1]), ("b.csv", [1])),
            RawZip.DirectoryHeaderOffset,
            0,
            4
        );

        AssertRefused(Verify(zip), "b.csv");
    }

    [Fact]
    public void Verify_HeaderWithAnotherNameThanTheDirectory_IsRefused()
    {
        var zip = RawZip.Of(("good.csv", [1]));
        var header = zip.AsSpan().IndexOf("good"u8);
        "evil"u8.CopyTo(zip.AsSpan(header));

        AssertRefused(Verify(zip), "good.csv");
    }

    [Fact]
    public void Verify_UnknownPackingMethod_IsNamed()
    {
        var zip = RawZip.Of(("good.csv", [1]));
        zip[8] = 12;
        zip = RawZip.WithDirectoryField(zip, RawZip.DirectoryMethod, 12, 2);

        Assert.Contains(
            Verify(zip).Problems,
            p => p is { Kind: ProblemKind.Unreadable, Path: "good.csv" }
        );
    }

    [Fact]
    public async Task Verify_DeepJson_IsNamedAndNothingBreaks()
    {
        var deep = Encoding.ASCII.GetBytes(new string('[', 200_000) + new string(']', 200_000));
        foreach (
            var path in (string[])["manifest.json", "ledger/0000000005.json", "ledger/proofs.json"]
        )
        {
            var files = await BundleFiles.SampleAsync();
            files[path] = deep;

            Assert.Contains(
                files.Verify().Problems,
                p => p.Kind == ProblemKind.Unreadable && p.Path == path
            );
        }
    }

    public static TheoryData<byte[]> NotZips =>
        new()
        {
            Array.Empty<byte>(),
            "x"u8.ToArray(),
            Encoding.ASCII.GetBytes("%PDF-1.7 " + new string('x', 5000)),
            new byte[100],
            (byte[])[.. RawZip.Of(("traveler.pdf", [1])), 0],
            (byte[])[1, .. RawZip.Of(("traveler.pdf", [1]))],
            RawZip.WithEndField(RawZip.Of(("a", [1])), RawZip.EndDirectoryOffset, 0, 4),
            RawZip.WithEndField(RawZip.Of(("a", [1])), RawZip.EndDirectoryOffset, 0x7fffffff, 4),
            RawZip.WithEndField(RawZip.Of(("a", [1])), RawZip.EndDirectoryOffset, uint.MaxValue, 4),
            RawZip.WithEndField(RawZip.Of(("a", [1])), RawZip.EndDirectoryLength, 0, 4),
            RawZip.WithEndField(RawZip.Of(("a", [1])), RawZip.EndFiles, 7, 2),
            RawZip.WithEndField(RawZip.Of(("a", [1])), RawZip.EndFiles, 0xffff, 2),
        };

    [Theory]
    [MemberData(nameof(NotZips), DisableDiscoveryEnumeration = true)]
    public void Verify_NotAZip_IsRefused(byte[] bytes)
    {
        var report = Verify(bytes);

        Assert.False(report.IsVerified);
        Assert.All(report.Problems, problem => Assert.Equal(ProblemKind.Refused, problem.Kind));
        Assert.NotEmpty(report.Problems);
    }

    [Fact]
    public async Task Verify_ZipCutAnywhere_IsNeverVerified()
    {
        var zip = await SampleBundle.WriteAsync(SampleBundle.Input());
        for (var length = 0; length < zip.Length; length += 97)
        {
            Assert.False(Verify(zip[..length]).IsVerified);
        }
    }

    // A turned bit in the ZIP's own fields may leave every file as it was; then it still verifies.
    [Fact]
    public async Task Verify_AnyBitTurned_NeverThrowsAndNeverHidesAChange()
    {
        var zip = await SampleBundle.WriteAsync(SampleBundle.Input());
        var files = BundleFiles.Unpack(zip);
        for (var at = 0; at < zip.Length; at += 13)
        {
            var copy = (byte[])zip.Clone();
            copy[at] ^= (byte)(1 << (at % 8));

            if (Verify(copy).IsVerified)
            {
                var now = BundleFiles.Unpack(copy);
                Assert.Equal(files.Keys, now.Keys);
                Assert.All(files, file => Assert.Equal(file.Value, now[file.Key]));
            }
        }
    }

    private static BundleReport Verify(byte[] zip, BundleLimits? limits = null) =>
        BundleVerifier.Verify(new MemoryStream(zip), null, limits);

    private static void AssertRefused(BundleReport report, string path)
    {
        Assert.False(report.IsVerified);
        var problem = Assert.Single(report.Problems, p => p.Kind == ProblemKind.Refused);
        Assert.Equal(path, problem.Path);
    }
}
