using System.Numerics;

namespace WeldTrace.Domain.Ledger;

/// <summary>
/// Checks the proofs of RFC 9162 sections 2.1.3.2 and 2.1.4.2. Every hash must have 32 bytes;
/// without that an empty root could be proved.
/// </summary>
public static class MerkleVerification
{
    /// <summary>Whether the path proves the leaf to stand at the index in the tree of that root.</summary>
    /// <param name="leafHash">Hash of the leaf.</param>
    /// <param name="leafIndex">0-based.</param>
    /// <param name="treeSize">Number of leaves.</param>
    /// <param name="path">The proof, from the leaf up.</param>
    /// <param name="root">Root of the tree.</param>
    public static bool Inclusion(
        byte[] leafHash,
        long leafIndex,
        long treeSize,
        IReadOnlyList<byte[]> path,
        byte[] root
    )
    {
        ArgumentNullException.ThrowIfNull(path);
        if (leafIndex < 0 || leafIndex >= treeSize || !AreHashes([leafHash, root, .. path]))
        {
            return false;
        }
        var (f, s) = (leafIndex, treeSize - 1);
        var hash = leafHash;
        foreach (var sibling in path)
        {
            if (s == 0)
            {
                return false;
            }
            if (IsOdd(f) || f == s)
            {
                hash = MerkleTree.NodeHash(sibling, hash);
                (f, s) = ClimbToOdd(f, s);
            }
            else
            {
                hash = MerkleTree.NodeHash(hash, sibling);
            }
            (f, s) = (f >> 1, s >> 1);
        }
        return s == 0 && hash.AsSpan().SequenceEqual(root);
    }

    /// <summary>Whether the path proves the larger tree to begin with the smaller one.</summary>
    /// <param name="firstSize">Size of the smaller tree; 0 needs no path.</param>
    /// <param name="secondSize">Size of the larger tree.</param>
    /// <param name="path">The proof.</param>
    /// <param name="firstRoot">Root of the smaller tree.</param>
    /// <param name="secondRoot">Root of the larger tree.</param>
    public static bool Consistency(
        long firstSize,
        long secondSize,
        IReadOnlyList<byte[]> path,
        byte[] firstRoot,
        byte[] secondRoot
    )
    {
        ArgumentNullException.ThrowIfNull(path);
        var sizes = firstSize >= 0 && firstSize <= secondSize;
        if (!sizes || !AreHashes([firstRoot, secondRoot, .. path]))
        {
            return false;
        }
        if (firstSize == secondSize)
        {
            return path.Count == 0 && firstRoot.AsSpan().SequenceEqual(secondRoot);
        }
        return firstSize == 0
            ? path.Count == 0 && firstRoot.AsSpan().SequenceEqual(MerkleTree.EmptyRoot())
            : Grows(firstSize, secondSize, path, firstRoot, secondRoot);
    }

    private static bool Grows(
        long firstSize,
        long secondSize,
        IReadOnlyList<byte[]> path,
        byte[] firstRoot,
        byte[] secondRoot
    )
    {
        if (path.Count == 0)
        {
            return false;
        }
        byte[][] hashes = BitOperations.IsPow2(firstSize) ? [firstRoot, .. path] : [.. path];
        var (f, s) = (firstSize - 1, secondSize - 1);
        while (IsOdd(f))
        {
            (f, s) = (f >> 1, s >> 1);
        }
        var (first, second) = (hashes[0], hashes[0]);
        foreach (var sibling in hashes.AsSpan(1))
        {
            if (s == 0)
            {
                return false;
            }
            if (IsOdd(f) || f == s)
            {
                first = MerkleTree.NodeHash(sibling, first);
                second = MerkleTree.NodeHash(sibling, second);
                (f, s) = ClimbToOdd(f, s);
            }
            else
            {
                second = MerkleTree.NodeHash(second, sibling);
            }
            (f, s) = (f >> 1, s >> 1);
        }
        return s == 0
            && first.AsSpan().SequenceEqual(firstRoot)
            && second.AsSpan().SequenceEqual(secondRoot);
    }

    private static (long F, long S) ClimbToOdd(long f, long s)
    {
        while (!IsOdd(f) && f != 0)
        {
            (f, s) = (f >> 1, s >> 1);
        }
        return (f, s);
    }

    private static bool IsOdd(long value) => (value & 1) == 1;

    private static bool AreHashes(byte[][] hashes) =>
        Array.TrueForAll(hashes, hash => hash is { Length: MerkleTree.HashLength });
}
