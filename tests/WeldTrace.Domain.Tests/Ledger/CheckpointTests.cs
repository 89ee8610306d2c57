using System.Text;
using WeldTrace.Domain.Ledger;
using Xunit;

namespace WeldTrace.Domain.Tests.Ledger;

public sealed class CheckpointTests
{
    private static readonly Checkpoint Sample = new()
    {
        SiteName = "Brinefield Reservoirs",
        TreeSize = 8,
        RootHex = ReferenceTree.Roots[8],
        At = new DateTimeOffset(2026, 3, 2, 9, 0, 0, TimeSpan.Zero),
    };

    // Written by hand from RFC 8785.
    private static readonly string Text =
        """{"at":"2026-03-02T09:00:00.000000Z","format":"weldtrace-checkpoint-1","root":"ROOT","site":"Brinefield Reservoirs","treeSize":8}""".Replace(
            "ROOT",
            ReferenceTree.Roots[8],
            StringComparison.Ordinal
        );

    [Fact]
    public void ToCanonicalBytes_Checkpoint_IsTheWrittenOutText()
    {
        Assert.Equal(Text, Encoding.UTF8.GetString(Sample.ToCanonicalBytes()));
        Assert.Equal(Sample, Checkpoint.FromCanonicalBytes(Sample.ToCanonicalBytes()));
        Assert.Equal(ReferenceTree.Root(8), Sample.Root());
    }

    [Theory]
    [InlineData("8}", "8.0}")]
    [InlineData("8}", "-8}")]
    [InlineData("8}", "8,\"x\":1}")]
    [InlineData("checkpoint-1", "checkpoint-2")]
    [InlineData("5dc9", "5DC9")]
    [InlineData("5dc9", "")]
    [InlineData("\"Brinefield Reservoirs\"", "null")]
    [InlineData(".000000Z", "Z")]
    public void FromCanonicalBytes_AnyOtherForm_IsRefused(string part, string replacement)
    {
        Assert.Contains(part, Text);
        var text = Text.Replace(part, replacement, StringComparison.Ordinal);

        Assert.ThrowsAny<FormatException>(() =>
            Checkpoint.FromCanonicalBytes(Encoding.UTF8.GetBytes(text))
        );
    }

    [Fact]
    public void Sign_Checkpoint_VerifiesOverItsCanonicalBytes()
    {
        using var key = SiteKey.Create();

        var signed = key.Sign(Sample);

        Assert.True(key.Verify(Encoding.UTF8.GetBytes(Text), signed.Signature));
    }
}
