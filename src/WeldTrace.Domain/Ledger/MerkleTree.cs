using System.Numerics;
using System.Security.Cryptography;

namespace WeldTrace.Domain.Ledger;

/// <summary>Hashes of the Merkle tree of RFC 9162 section 2.1.1, with SHA-256.</summary>
public static class MerkleTree
{
    /// <summary>Length of every hash, in bytes.</summary>
    public const int HashLength = SHA256.HashSizeInBytes;

    /// <summary>Hash of the tree without leaves: SHA-256 of nothing.</summary>
    public static byte[] EmptyRoot() => SHA256.HashData([]);

    /// <summary>SHA-256 of a zero byte and the data.</summary>
    /// <param name="data">Any bytes.</param>
    public static byte[] LeafHash(ReadOnlySpan<byte> data) => Hash(0x00, data, []);

    /// <summary>SHA-256 of a one byte and both hashes.</summary>
    /// <param name="left">Hash of the left subtree, 32 bytes.</param>
    /// <param name="right">Hash of the right subtree, 32 bytes.</param>
    public static byte[] NodeHash(ReadOnlySpan<byte> left, ReadOnlySpan<byte> right) =>
        Hash(0x01, left, right);

    /// <summary>Root of the tree over the leaf hashes, in order.</summary>
    /// <param name="leafHashes">Leaf hashes, 32 bytes each.</param>
    public static byte[] Root(IEnumerable<byte[]> leafHashes)
    {
        ArgumentNullException.ThrowIfNull(leafHashes);
        var frontier = MerkleFrontier.Empty;
        foreach (var leafHash in leafHashes)
        {
            frontier = frontier.Append(leafHash).Frontier;
        }
        return frontier.Root();
    }

    internal static long SplitPoint(long size) => 1L << BitOperations.Log2((ulong)(size - 1));

    internal static void RequireHash(byte[] hash)
    {
        ArgumentNullException.ThrowIfNull(hash);
        if (hash.Length != HashLength)
        {
            throw new ArgumentException("A hash has 32 bytes.", nameof(hash));
        }
    }

    private static byte[] Hash(byte prefix, ReadOnlySpan<byte> first, ReadOnlySpan<byte> second)
    {
        using var sha = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        sha.AppendData([prefix]);
        sha.AppendData(first);
        sha.AppendData(second);
        return sha.GetHashAndReset();
    }
}
