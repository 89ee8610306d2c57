using System.Text;
using WeldTrace.Domain.Ledger;
using Xunit;

namespace WeldTrace.Domain.Tests.Ledger;

public sealed class MerkleTreeTests
{
    [Fact]
    public void LeafHash_ReferenceInputs_GivesTheReferenceLeaves()
    {
        var leaves = ReferenceTree.Inputs.Select(hex =>
            Convert.ToHexStringLower(MerkleTree.LeafHash(ReferenceTree.Hash(hex)))
        );

        Assert.Equal(ReferenceTree.Leaves, leaves);
    }

    [Fact]
    public void Root_EverySize_IsTheReferenceRoot()
    {
        var leaves = ReferenceTree.Leaves.Select(ReferenceTree.Hash).ToArray();

        Assert.Equal(
            ReferenceTree.Roots,
            Enumerable
                .Range(0, 9)
                .Select(n => Convert.ToHexStringLower(MerkleTree.Root(leaves[..n])))
        );
    }

    // Two further values of the same reference test data.
    [Fact]
    public void LeafHash_Text_IsTheReferenceValue() =>
        Assert.Equal(
            "395aa064aa4c29f7010acfe3f25db9485bbd4b91897b6ad7ad547639252b4d56",
            Convert.ToHexStringLower(MerkleTree.LeafHash("L123456"u8))
        );

    [Fact]
    public void NodeHash_Text_IsTheReferenceValue() =>
        Assert.Equal(
            "aa217fe888e47007fa15edab33c2b492a722cb106c64667fc2b044444de66bbb",
            Convert.ToHexStringLower(MerkleTree.NodeHash("N123"u8, "N456"u8))
        );

    [Fact]
    public void LeafHash_DataThatLooksLikeANode_DiffersFromTheNode()
    {
        var (left, right) = (MerkleTree.LeafHash("a"u8), MerkleTree.LeafHash("b"u8));

        Assert.NotEqual(MerkleTree.NodeHash(left, right), MerkleTree.LeafHash([.. left, .. right]));
    }

    [Fact]
    public void Append_LeafOfWrongLength_Throws() =>
        Assert.Throws<ArgumentException>(() => MerkleFrontier.Empty.Append(new byte[31]));

    [Fact]
    public void Append_EightLeaves_ReturnsEveryNodeOnce()
    {
        var frontier = MerkleFrontier.Empty;
        var nodes = new List<MerkleNode>();
        foreach (var leaf in ReferenceTree.Leaves)
        {
            (frontier, var completed) = frontier.Append(ReferenceTree.Hash(leaf));
            nodes.AddRange(completed);
        }

        Assert.Equal(15, nodes.DistinctBy(node => (node.Level, node.Index)).Count());
        Assert.Equal(15, nodes.Count);
        Assert.All(nodes, n => Assert.Equal(ReferenceTree.Node(n.Level, n.Index), n.Hash));
        Assert.Equal(8, frontier.Size);
    }

    [Fact]
    public void FromBytes_StoredFrontier_GoesOnAsBefore()
    {
        var frontier = MerkleFrontier.Empty;
        for (var n = 0; n < 8; n++)
        {
            Assert.Equal(ReferenceTree.Root(n), frontier.Root());
            var stored = MerkleFrontier.FromBytes(frontier.ToBytes());
            Assert.Equal(n, stored.Size);
            frontier = stored.Append(ReferenceTree.Hash(ReferenceTree.Leaves[n])).Frontier;
        }

        Assert.Equal(ReferenceTree.Root(8), frontier.Root());
    }

    [Theory]
    [InlineData("")]
    [InlineData("00000000000000")]
    [InlineData("0000000000000001")]
    [InlineData("000000000000000000")]
    [InlineData("8000000000000000")]
    public void FromBytes_LengthThatDoesNotFit_IsRefused(string hex) =>
        Assert.Throws<FormatException>(() => MerkleFrontier.FromBytes(ReferenceTree.Hash(hex)));

    [Fact]
    public void Append_OldState_StaysAsItWas()
    {
        var before = MerkleFrontier.Empty.Append(MerkleTree.LeafHash("a"u8)).Frontier;
        var root = Encoding.ASCII.GetBytes(Convert.ToHexString(before.Root()));

        before.Append(MerkleTree.LeafHash("b"u8));

        Assert.Equal(1, before.Size);
        Assert.Equal(root, Encoding.ASCII.GetBytes(Convert.ToHexString(before.Root())));
    }
}
