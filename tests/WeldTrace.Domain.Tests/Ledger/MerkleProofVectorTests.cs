using WeldTrace.Domain.Ledger;
using Xunit;

namespace WeldTrace.Domain.Tests.Ledger;

public sealed class MerkleProofVectorTests
{
    // Public certificate-transparency reference test data.
    public static TheoryData<long, long, string[]> Inclusions =>
        new()
        {
            { 0, 1, [] },
            { 0, 8, ["96a296d2", "5f083f0a", "6b47aaf2"] },
            { 5, 8, ["bc1a0643", "ca854ea1", "d37ee418"] },
            { 2, 3, ["fac54203"] },
            { 1, 5, ["6e340b9c", "5f083f0a", "bc1a0643"] },
        };

    public static TheoryData<long, long, string[]> Consistencies =>
        new()
        {
            { 1, 1, [] },
            { 1, 8, ["96a296d2", "5f083f0a", "6b47aaf2"] },
            { 6, 8, ["0ebc5d34", "ca854ea1", "d37ee418"] },
            { 2, 5, ["5f083f0a", "bc1a0643"] },
            { 6, 7, ["0ebc5d34", "b08693ec", "d37ee418"] },
        };

    [Theory]
    [MemberData(nameof(Inclusions))]
    public void Inclusion_ReferenceCase_IsMadeAndAccepted(long index, long size, string[] starts)
    {
        var path = MerkleProofs.Inclusion(index, size, ReferenceTree.Node);

        Assert.Equal(ReferenceTree.Path(starts), path);
        var leaf = ReferenceTree.Node(0, index);
        Assert.True(
            MerkleVerification.Inclusion(leaf, index, size, path, ReferenceTree.Root(size))
        );
    }

    [Theory]
    [MemberData(nameof(Consistencies))]
    public void Consistency_ReferenceCase_IsMadeAndAccepted(
        long first,
        long second,
        string[] starts
    )
    {
        var path = MerkleProofs.Consistency(first, second, ReferenceTree.Node);

        Assert.Equal(ReferenceTree.Path(starts), path);
        Assert.True(
            MerkleVerification.Consistency(
                first,
                second,
                path,
                ReferenceTree.Root(first),
                ReferenceTree.Root(second)
            )
        );
    }

    [Theory]
    [MemberData(nameof(Inclusions))]
    public void Inclusion_SpoiltReferenceCase_IsRefused(long index, long size, string[] starts)
    {
        var good = new Proof(
            ReferenceTree.Node(0, index),
            index,
            size,
            ReferenceTree.Path(starts),
            ReferenceTree.Root(size)
        );

        Assert.True(good.Holds());
        Assert.All(good.Spoilt(), spoilt => Assert.False(spoilt.Proof.Holds(), spoilt.How));
    }

    [Theory]
    [MemberData(nameof(Consistencies))]
    public void Consistency_SpoiltReferenceCase_IsRefused(long first, long second, string[] starts)
    {
        var good = new Growth(
            first,
            second,
            ReferenceTree.Path(starts),
            ReferenceTree.Root(first),
            ReferenceTree.Root(second)
        );

        Assert.True(good.Holds());
        Assert.All(good.Spoilt(), spoilt => Assert.False(spoilt.Growth.Holds(), spoilt.How));
    }

    // Without the length check an empty root and an empty leaf hash would pass.
    [Fact]
    public void Inclusion_EmptyRootAndEmptyLeaf_IsRefused() =>
        Assert.False(MerkleVerification.Inclusion([], 0, 1, [], []));

    [Fact]
    public void Consistency_EmptyRoots_IsRefused() =>
        Assert.False(MerkleVerification.Consistency(1, 1, [], [], []));

    // A positive case of the reference data has 12-byte roots; the length check refuses it on purpose.
    [Fact]
    public void Consistency_ShortEqualRoots_IsRefused() =>
        Assert.False(MerkleVerification.Consistency(2, 2, [], new byte[12], new byte[12]));

    [Theory]
    [InlineData(0, 0)]
    [InlineData(1, 1)]
    [InlineData(2, 1)]
    [InlineData(-1, 1)]
    [InlineData(0, -1)]
    [InlineData(long.MaxValue, long.MaxValue)]
    public void Inclusion_IndexOutsideTheTree_IsRefused(long index, long size)
    {
        var leaf = ReferenceTree.Node(0, 0);

        Assert.False(MerkleVerification.Inclusion(leaf, index, size, [], leaf));
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            MerkleProofs.Inclusion(index, size, ReferenceTree.Node)
        );
    }

    [Fact]
    public void Consistency_FromTheEmptyTree_NeedsTheEmptyRootAndNoPath()
    {
        var root = ReferenceTree.Root(8);
        var empty = MerkleTree.EmptyRoot();

        Assert.True(MerkleVerification.Consistency(0, 8, [], empty, root));
        Assert.False(MerkleVerification.Consistency(0, 8, [], root, root));
        Assert.False(MerkleVerification.Consistency(0, 8, [root], empty, root));
        Assert.True(MerkleVerification.Consistency(0, 0, [], empty, empty));
    }
}
