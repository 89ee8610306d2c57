using System.Text;
using WeldTrace.Domain.Ledger;
using Xunit;

namespace WeldTrace.Domain.Tests.Ledger;

public sealed class BundleManifestTests
{
    private static readonly BundleManifest Sample = new()
    {
        VesselSerial = "NR-0142",
        VesselId = SampleEntries.Vessel,
        SiteName = "Brinefield Reservoirs",
        MadeAt = new DateTimeOffset(2026, 3, 2, 9, 0, 0, TimeSpan.Zero),
        Files = [File("traveler.pdf", 3), File("VERIFY.md", 2), File("records/weld-run/1.json", 0)],
    };

    private static string Text => Encoding.UTF8.GetString(Sample.ToCanonicalBytes());

    [Fact]
    public void ToCanonicalBytes_Manifest_ListsFilesInOrdinalOrder()
    {
        Assert.Equal(
            ["VERIFY.md", "records/weld-run/1.json", "traveler.pdf"],
            Sample.Files.Select(file => file.Path)
        );
        Assert.StartsWith(
            "{\"files\":[{\"bytes\":2,\"path\":\"VERIFY.md\",\"sha256\":\"6e34",
            Text
        );
        Assert.Contains("\"format\":\"weldtrace-history-bundle\"", Text);
        Assert.Contains("\"version\":3,\"vesselId\":\"0198c0de", Text);
        Assert.EndsWith("\"vesselSerial\":\"NR-0142\"}", Text);
    }

    [Fact]
    public void FromCanonicalBytes_WrittenManifest_ReadsTheSame()
    {
        var read = BundleManifest.FromCanonicalBytes(Sample.ToCanonicalBytes());

        Assert.Equal(Sample.Files, read.Files);
        Assert.Equal(Sample.VesselSerial, read.VesselSerial);
        Assert.Equal(Sample.VesselId, read.VesselId);
        Assert.Equal(Sample.SiteName, read.SiteName);
        Assert.Equal(Sample.MadeAt, read.MadeAt);
    }

    [Theory]
    [InlineData("\"version\":3", "\"version\":4")]
    [InlineData("weldtrace-history-bundle", "weldtrace-other")]
    [InlineData("VERIFY.md", "../VERIFY.md")]
    [InlineData("VERIFY.md", "zzz")]
    [InlineData("VERIFY.md", "traveler.pdf")]
    [InlineData("\"bytes\":2", "\"bytes\":-2")]
    [InlineData("\"bytes\":2,", "")]
    [InlineData("\"files\":[{", "\"files\":[null,{")]
    public void FromCanonicalBytes_AnyOtherForm_IsRefused(string part, string replacement)
    {
        Assert.Contains(part, Text);
        var text = Text.Replace(part, replacement, StringComparison.Ordinal);

        Assert.ThrowsAny<FormatException>(() =>
            BundleManifest.FromCanonicalBytes(Encoding.UTF8.GetBytes(text))
        );
    }

    [Theory]
    [InlineData("traveler.pdf")]
    [InlineData("records/weld-run/0198c0de-0000-7000-8000-00000000000a.json")]
    [InlineData("a/b/c/d.e-f_g")]
    public void IsSafe_PlainRelativePath_IsTrue(string path) =>
        Assert.True(BundlePaths.IsSafe(path));

    [Theory]
    [InlineData("")]
    [InlineData("/etc/passwd")]
    [InlineData("../a")]
    [InlineData("a/../b")]
    [InlineData("a/..")]
    [InlineData("a/./b")]
    [InlineData("a//b")]
    [InlineData("a/")]
    [InlineData("a\\b")]
    [InlineData("C:a")]
    [InlineData("a\nb")]
    [InlineData("a\0b")]
    [InlineData("a b")]
    [InlineData("é")]
    [InlineData(".hidden")]
    [InlineData("a.")]
    [InlineData("~/a*")]
    public void IsSafe_AnyOtherPath_IsFalse(string path) => Assert.False(BundlePaths.IsSafe(path));

    [Fact]
    public void IsSafe_LongPath_IsFalse() => Assert.False(BundlePaths.IsSafe(new string('a', 201)));

    private static BundleFile File(string path, long bytes) =>
        new()
        {
            Path = path,
            Bytes = bytes,
            Sha256 = ReferenceTree.Leaves[0],
        };
}
