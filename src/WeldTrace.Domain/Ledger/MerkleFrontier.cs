using System.Buffers.Binary;
using System.Numerics;

namespace WeldTrace.Domain.Ledger;

/// <summary>
/// All that an append-only tree must remember to go on: its size and the roots of its perfect
/// subtrees, largest first. Immutable, so a failed transaction leaves nothing behind.
/// </summary>
public sealed class MerkleFrontier
{
    private readonly byte[][] _roots;

    private MerkleFrontier(long size, byte[][] roots)
    {
        Size = size;
        _roots = roots;
    }

    /// <summary>The tree without leaves.</summary>
    public static MerkleFrontier Empty { get; } = new(0, []);

    /// <summary>Number of leaves.</summary>
    public long Size { get; }

    /// <summary>Appends one leaf.</summary>
    /// <param name="leafHash">Hash of the leaf, 32 bytes.</param>
    /// <returns>The new state and every node that is now complete: the leaf, then its parents.</returns>
    public (MerkleFrontier Frontier, IReadOnlyList<MerkleNode> Completed) Append(byte[] leafHash)
    {
        MerkleTree.RequireHash(leafHash);
        var roots = new List<byte[]>(_roots);
        var node = new MerkleNode(0, Size, leafHash);
        var completed = new List<MerkleNode> { node };
        while ((node.Index & 1) == 1)
        {
            var parent = MerkleTree.NodeHash(roots[^1], node.Hash);
            roots.RemoveAt(roots.Count - 1);
            node = new MerkleNode(node.Level + 1, node.Index >> 1, parent);
            completed.Add(node);
        }
        roots.Add(node.Hash);
        return (new MerkleFrontier(Size + 1, [.. roots]), completed);
    }

    /// <summary>Root hash of the tree, 32 bytes.</summary>
    public byte[] Root()
    {
        if (Size == 0)
        {
            return MerkleTree.EmptyRoot();
        }
        var root = _roots[^1];
        for (var i = _roots.Length - 2; i >= 0; i--)
        {
            root = MerkleTree.NodeHash(_roots[i], root);
        }
        return root;
    }

    /// <summary>Size as 8 bytes, big-endian, then the subtree roots, largest first.</summary>
    public byte[] ToBytes()
    {
        var size = new byte[sizeof(long)];
        BinaryPrimitives.WriteInt64BigEndian(size, Size);
        return [.. size, .. _roots.SelectMany(root => root)];
    }

    /// <summary>Reads what <see cref="ToBytes"/> wrote.</summary>
    /// <param name="bytes">The stored state.</param>
    /// <exception cref="FormatException">The length does not fit the size.</exception>
    public static MerkleFrontier FromBytes(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length < sizeof(long))
        {
            throw new FormatException("The stored tree state is shorter than its size field.");
        }
        var size = BinaryPrimitives.ReadInt64BigEndian(bytes);
        var rest = bytes[sizeof(long)..];
        if (size < 0 || rest.Length != BitOperations.PopCount((ulong)size) * MerkleTree.HashLength)
        {
            throw new FormatException("The stored tree state does not fit its size.");
        }
        return new MerkleFrontier(size, [.. rest.ToArray().Chunk(MerkleTree.HashLength)]);
    }
}
