using System.Text;
using WeldTrace.Domain.Ledger;
using Xunit;

namespace WeldTrace.Domain.Tests.Ledger;

public sealed class InclusionProofsTests
{
    private static readonly InclusionProofs Sample = new(
        8,
        [new(2, [ReferenceTree.Root(1), ReferenceTree.Root(2)]), new(5, [])]
    );

    private static string Text => Encoding.UTF8.GetString(Sample.ToCanonicalBytes());

    [Fact]
    public void FromCanonicalBytes_WrittenProofs_ReadsTheSame()
    {
        var read = InclusionProofs.FromCanonicalBytes(Sample.ToCanonicalBytes());

        Assert.Equal(8, read.TreeSize);
        Assert.Equal([2, 5], read.Proofs.Select(proof => proof.Number));
        Assert.Equal(Sample.Proofs[0].Path, read.Proofs[0].Path);
        Assert.Empty(read.Proofs[1].Path);
    }

    [Theory]
    [InlineData("\"number\":2", "\"number\":5")]
    [InlineData("\"number\":2", "\"number\":7")]
    [InlineData("6e34", "6E34")]
    [InlineData("6e34", "")]
    [InlineData("6e34", "zzzz")]
    [InlineData("proofs-1", "proofs-9")]
    public void FromCanonicalBytes_AnyOtherForm_IsRefused(string part, string replacement)
    {
        Assert.Contains(part, Text);
        var text = Text.Replace(part, replacement, StringComparison.Ordinal);

        Assert.ThrowsAny<FormatException>(() =>
            InclusionProofs.FromCanonicalBytes(Encoding.UTF8.GetBytes(text))
        );
    }
}
