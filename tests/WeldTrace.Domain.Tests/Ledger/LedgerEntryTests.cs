using System.Text;
using WeldTrace.Domain.Ledger;
using Xunit;

namespace WeldTrace.Domain.Tests.Ledger;

public sealed class LedgerEntryTests
{
    // Written by hand from RFC 8785 and the entry's description.
    private const string Canonical =
        """{"act":"weld run ended","actorId":"0198c0de-0000-7000-8000-000000000001","""
        + """ "actorName":"Ewa Nowak-Ødegård","at":"2026-03-02T09:15:30.000000Z","""
        + """ "content":{"joint":"J1","metres":"1.250","pass":2},"format":"weldtrace-entry-1","""
        + """ "number":41,"reason":"Traverse stopped:\n\"axial force\" low","""
        + """ "recordId":"0198c0de-0000-7000-8000-000000000002","recordKind":"weld-run","""
        + """ "recordVersion":3,"vessels":["0198c0de-0000-7000-8000-00000000000a","""
        + """ "0198c0de-0000-7000-8000-00000000000b"]}""";

    private static string Expected => Canonical.Replace(", \"", ",\"", StringComparison.Ordinal);

    [Fact]
    public void ToCanonicalBytes_FullEntry_IsTheWrittenOutText() =>
        Assert.Equal(Expected, Encoding.UTF8.GetString(SampleEntries.RunEnded.ToCanonicalBytes()));

    [Fact]
    public void ToCanonicalBytes_FullEntry_IsCanonicalJson() =>
        Assert.True(CanonicalJson.IsCanonical(SampleEntries.RunEnded.ToCanonicalBytes()));

    [Fact]
    public void FromCanonicalBytes_WrittenEntry_ReadsTheSameEntry()
    {
        var read = LedgerEntry.FromCanonicalBytes(SampleEntries.RunEnded.ToCanonicalBytes());

        Assert.Equal(SampleEntries.RunEnded, read);
        Assert.Equal(SampleEntries.RunEnded.At, read.At);
        Assert.Equal([SampleEntries.Vessel, SampleEntries.OtherVessel], read.Vessels);
        Assert.Equal(SampleEntries.RunEnded.LeafHash(), read.LeafHash());
    }

    [Fact]
    public void FromCanonicalBytes_WithoutReason_ReadsTheSameEntry()
    {
        var entry = SampleEntries.RunEnded with { Reason = null };

        Assert.Null(LedgerEntry.FromCanonicalBytes(entry.ToCanonicalBytes()).Reason);
    }

    [Fact]
    public void LeafHash_Entry_IsTheLeafHashOfItsBytes() =>
        Assert.Equal(
            MerkleTree.LeafHash(Encoding.UTF8.GetBytes(Expected)),
            SampleEntries.RunEnded.LeafHash()
        );

    [Fact]
    public void At_FinerThanMicroseconds_IsCut()
    {
        var entry = SampleEntries.RunEnded with
        {
            At = new DateTimeOffset(2026, 3, 2, 9, 0, 0, TimeSpan.Zero).AddTicks(12_345_679),
        };

        Assert.Contains("\"at\":\"2026-03-02T09:00:01.234567Z\"", entry.ToString());
    }

    [Theory]
    [InlineData("\"number\":41", "\"number\":42.0")]
    [InlineData("\"number\":41", "\"number\":-1")]
    [InlineData("\"number\":41", "\"number\": 41")]
    [InlineData("\"number\":41", "\"number\":\"41\"")]
    [InlineData("\"number\":41", "\"number\":9007199254740993")]
    [InlineData("\"number\":41,", "")]
    [InlineData("\"number\":41", "\"number\":41,\"number\":41")]
    [InlineData("\"number\":41", "\"number\":41,\"other\":1")]
    [InlineData("weldtrace-entry-1", "weldtrace-entry-2")]
    [InlineData("09:15:30.000000Z", "09:15:30Z")]
    [InlineData("09:15:30.000000Z", "09:15:30.000000+00:00")]
    [InlineData("2026-03-02", "2026-02-30")]
    [InlineData("-00000000000a\",", "-00000000000c\",")]
    [InlineData("0198c0de-0000-7000-8000-000000000002", "0198C0DE-0000-7000-8000-000000000002")]
    [InlineData("\"recordVersion\":3", "\"recordVersion\":0")]
    [InlineData("\"recordKind\":\"weld-run\"", "\"recordKind\":\"../weld\"")]
    [InlineData("{\"joint\":\"J1\",\"metres\":\"1.250\",\"pass\":2}", "[]")]
    [InlineData("\"act\":\"weld run ended\"", "\"act\":null")]
    [InlineData("\"act\":\"weld run ended\"", "\"act\":\"\\ud800\"")]
    [InlineData("\"vessels\":[", "\"vessels\":[null,")]
    [InlineData("]}", "]}\n")]
    [InlineData("]}", "]")]
    public void FromCanonicalBytes_AnyOtherForm_IsRefused(string part, string replacement)
    {
        Assert.Contains(part, Expected);
        var text = Expected.Replace(part, replacement, StringComparison.Ordinal);

        Assert.ThrowsAny<FormatException>(() =>
            LedgerEntry.FromCanonicalBytes(Encoding.UTF8.GetBytes(text))
        );
    }

    [Theory]
    [InlineData("[1]")]
    [InlineData("{\"a\":1,\"a\":2}")]
    [InlineData("{")]
    public void Content_NotAStrictObject_Throws(string content) =>
        Assert.Throws<ArgumentException>(() => SampleEntries.RunEnded with { Content = content });

    [Theory]
    [InlineData("")]
    [InlineData(" ")]
    [InlineData("two\nlines")]
    public void ActorName_NotOneLineOfText_Throws(string name) =>
        Assert.Throws<ArgumentException>(() => SampleEntries.RunEnded with { ActorName = name });

    [Fact]
    public void ActorName_HalfSurrogatePair_Throws() =>
        Assert.Throws<ArgumentException>(() =>
            SampleEntries.RunEnded with
            {
                ActorName = "half " + '\ud800',
            }
        );
}
