using System.Numerics;

namespace WeldTrace.Domain.Ledger;

/// <summary>Makes the proofs of RFC 9162 sections 2.1.3 and 2.1.4 from stored nodes.</summary>
public static class MerkleProofs
{
    /// <summary>The path that proves one leaf to be in the tree; reads O(log n) nodes.</summary>
    /// <param name="leafIndex">0-based, below the size.</param>
    /// <param name="treeSize">Number of leaves of the tree to prove against.</param>
    /// <param name="node">Hash of the completed node at a level and index (<see cref="MerkleNode"/>).</param>
    public static IReadOnlyList<byte[]> Inclusion(
        long leafIndex,
        long treeSize,
        Func<int, long, byte[]> node
    )
    {
        ArgumentOutOfRangeException.ThrowIfNegative(leafIndex);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(leafIndex, treeSize);
        ArgumentNullException.ThrowIfNull(node);
        var path = new List<byte[]>();
        var (begin, end) = (0L, treeSize);
        while (end - begin > 1)
        {
            var middle = begin + MerkleTree.SplitPoint(end - begin);
            path.Add(leafIndex < middle ? Root(middle, end, node) : Root(begin, middle, node));
            (begin, end) = leafIndex < middle ? (begin, middle) : (middle, end);
        }
        path.Reverse();
        return path;
    }

    /// <summary>Which nodes <see cref="Inclusion"/> will ask for, so that they can be fetched at once.</summary>
    /// <param name="leafIndex">0-based, below the size.</param>
    /// <param name="treeSize">Number of leaves of the tree to prove against.</param>
    public static IReadOnlyList<(int Level, long Index)> InclusionNodes(
        long leafIndex,
        long treeSize
    )
    {
        var asked = new List<(int, long)>();
        Inclusion(leafIndex, treeSize, (level, index) => Note(asked, level, index));
        return asked;
    }

    /// <summary>The path that proves the larger tree to begin with the smaller one.</summary>
    /// <param name="firstSize">At least 1.</param>
    /// <param name="secondSize">At least the first size.</param>
    /// <param name="node">Hash of the completed node at a level and index.</param>
    public static IReadOnlyList<byte[]> Consistency(
        long firstSize,
        long secondSize,
        Func<int, long, byte[]> node
    )
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(firstSize, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(firstSize, secondSize);
        ArgumentNullException.ThrowIfNull(node);
        var path = new List<byte[]>();
        var (begin, end) = (0L, secondSize);
        while (end > firstSize)
        {
            var middle = begin + MerkleTree.SplitPoint(end - begin);
            var left = firstSize <= middle;
            path.Add(left ? Root(middle, end, node) : Root(begin, middle, node));
            (begin, end) = left ? (begin, middle) : (middle, end);
        }
        if (begin > 0)
        {
            path.Add(Root(begin, end, node));
        }
        path.Reverse();
        return path;
    }

    /// <summary>Which nodes <see cref="Consistency"/> will ask for.</summary>
    /// <param name="firstSize">At least 1.</param>
    /// <param name="secondSize">At least the first size.</param>
    public static IReadOnlyList<(int Level, long Index)> ConsistencyNodes(
        long firstSize,
        long secondSize
    )
    {
        var asked = new List<(int, long)>();
        Consistency(firstSize, secondSize, (level, index) => Note(asked, level, index));
        return asked;
    }

    private static byte[] Note(List<(int, long)> asked, int level, long index)
    {
        asked.Add((level, index));
        return new byte[MerkleTree.HashLength];
    }

    private static byte[] Root(long begin, long end, Func<int, long, byte[]> node)
    {
        var size = end - begin;
        if (BitOperations.IsPow2(size))
        {
            var level = BitOperations.Log2((ulong)size);
            return node(level, begin >> level);
        }
        var middle = begin + MerkleTree.SplitPoint(size);
        return MerkleTree.NodeHash(Root(begin, middle, node), Root(middle, end, node));
    }
}
