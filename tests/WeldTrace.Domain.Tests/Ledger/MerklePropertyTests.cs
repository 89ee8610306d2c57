using CsCheck;
using WeldTrace.Domain.Ledger;
using Xunit;

namespace WeldTrace.Domain.Tests.Ledger;

public sealed class MerklePropertyTests
{
    private static readonly Gen<byte[][]> Leaves = Gen
        .Byte.Array[1, 8]
        .Select(data => MerkleTree.LeafHash(data))
        .Array[1, 70];

    private static readonly Gen<(byte[][] Leaves, int At)> LeavesAndOne = Leaves.SelectMany(
        leaves => Gen.Int[0, leaves.Length - 1].Select(at => (leaves, at))
    );

    [Fact]
    public void Root_AnyLeaves_EqualsTheDefinition() =>
        Leaves.Sample(leaves => MerkleTree.Root(leaves).SequenceEqual(NaiveTree.Hash(leaves)));

    [Fact]
    public void Append_AnyLeaves_CompletesExactlyThePerfectSubtrees() =>
        Leaves.Sample(leaves =>
        {
            var nodes = Store(leaves);
            return nodes.Count == ExpectedNodes(leaves.Length)
                && nodes.All(node =>
                    node.Value.SequenceEqual(
                        NaiveTree.Hash(Covered(leaves, node.Key.Level, node.Key.Index))
                    )
                );
        });

    [Fact]
    public void Inclusion_AnyLeaf_EqualsTheDefinitionAndHolds() =>
        LeavesAndOne.Sample(
            (leaves, at) =>
            {
                var nodes = Store(leaves);
                var path = MerkleProofs.Inclusion(
                    at,
                    leaves.Length,
                    (level, index) => nodes[(level, index)]
                );
                var proof = new Proof(
                    leaves[at],
                    at,
                    leaves.Length,
                    [.. path],
                    MerkleTree.Root(leaves)
                );
                return Same(path, NaiveTree.Path(at, leaves))
                    && proof.Holds()
                    && proof.Spoilt().Where(Differs(leaves, at)).All(s => !s.Proof.Holds());
            }
        );

    [Fact]
    public void Consistency_AnySizes_EqualsTheDefinitionAndHolds() =>
        LeavesAndOne.Sample(
            (leaves, at) =>
            {
                var nodes = Store(leaves);
                var first = at + 1;
                var path = MerkleProofs.Consistency(
                    first,
                    leaves.Length,
                    (level, index) => nodes[(level, index)]
                );
                var growth = new Growth(
                    first,
                    leaves.Length,
                    [.. path],
                    NaiveTree.Hash(leaves.AsSpan(0, first)),
                    NaiveTree.Hash(leaves)
                );
                return Same(path, NaiveTree.Consistency(first, leaves))
                    && growth.Holds()
                    && growth.Spoilt().All(s => !s.Growth.Holds());
            }
        );

    [Fact]
    public void InclusionNodes_AnyLeaf_NamesEveryNodeAsked() =>
        LeavesAndOne.Sample(
            (leaves, at) =>
            {
                var asked = new List<(int, long)>();
                var nodes = Store(leaves);
                MerkleProofs.Inclusion(
                    at,
                    leaves.Length,
                    (level, index) =>
                    {
                        asked.Add((level, index));
                        return nodes[(level, index)];
                    }
                );
                return asked.SequenceEqual(MerkleProofs.InclusionNodes(at, leaves.Length));
            }
        );

    [Fact]
    public void InclusionNodes_HugeTree_StaysSmall() =>
        Gen.Long[1, (1L << 53) - 1]
            .SelectMany(size => Gen.Long[0, size - 1].Select(at => (at, size)))
            .Sample(
                (at, size) =>
                    MerkleProofs.InclusionNodes(at, size).Count <= 110
                    && MerkleProofs.ConsistencyNodes(at + 1, size).Count <= 110
            );

    private static Dictionary<(int Level, long Index), byte[]> Store(byte[][] leaves)
    {
        var frontier = MerkleFrontier.Empty;
        var nodes = new Dictionary<(int, long), byte[]>();
        foreach (var leaf in leaves)
        {
            (frontier, var completed) = frontier.Append(leaf);
            foreach (var node in completed)
            {
                nodes.Add((node.Level, node.Index), node.Hash);
            }
        }
        return nodes;
    }

    private static int ExpectedNodes(int size) => size == 0 ? 0 : size + ExpectedNodes(size / 2);

    private static ReadOnlySpan<byte[]> Covered(byte[][] leaves, int level, long index) =>
        leaves.AsSpan((int)index << level, 1 << level);

    // Equal leaves can make a proof for one index hold for another; those are no spoilt proofs.
    private static Func<(string How, Proof Proof), bool> Differs(byte[][] leaves, int at) =>
        spoilt =>
            spoilt.Proof.Index == at
            || spoilt.Proof.Index < 0
            || spoilt.Proof.Index >= leaves.Length
            || !leaves[spoilt.Proof.Index].SequenceEqual(leaves[at]);

    private static bool Same(IReadOnlyList<byte[]> path, byte[][] expected) =>
        path.Count == expected.Length
        && path.Zip(expected).All(pair => pair.First.SequenceEqual(pair.Second));
}
