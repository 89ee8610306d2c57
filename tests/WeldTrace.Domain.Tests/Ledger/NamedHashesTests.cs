using WeldTrace.Domain.Ledger;
using Xunit;

namespace WeldTrace.Domain.Tests.Ledger;

public sealed class NamedHashesTests
{
    [Fact]
    public void In_NestedRecord_FindsAttachmentsAndLogs()
    {
        var (photo, log) = (ReferenceTree.Leaves[0], ReferenceTree.Leaves[1]);
        var record =
            $$"""{"csvSha256":"{{log}}","photos":[{"sha256":"{{photo}}","fileName":"a.jpg"}],"sha256":"short"}""";

        var named = NamedHashes.In(record);

        Assert.Equal([photo], named.Attachments);
        Assert.Equal([log], named.Logs);
    }

    [Theory]
    [InlineData("fileSha256")]
    [InlineData("chartSha256")]
    [InlineData("lifeEvidenceSha256")]
    public void In_PaperOfARecord_IsAnAttachment(string member)
    {
        var hash = ReferenceTree.Leaves[0];

        Assert.Equal(
            [hash],
            NamedHashes.In($$"""{"document": {"{{member}}":"{{hash}}"} }""").Attachments
        );
    }

    [Fact]
    public void In_OtherMembersAndForms_FindsNothing()
    {
        var hash = ReferenceTree.Leaves[0];
        var record =
            $$"""{"note":"{{hash}}","sha256":["{{hash}}"],"csvSha256":"{{hash.ToUpperInvariant()}}","signedSha256":"{{hash}}","x":{"sha256":1} }""";

        var named = NamedHashes.In(record);

        Assert.Empty(named.Attachments);
        Assert.Empty(named.Logs);
    }
}
