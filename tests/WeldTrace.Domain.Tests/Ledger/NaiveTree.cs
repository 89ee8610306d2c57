using System.Security.Cryptography;

namespace WeldTrace.Domain.Tests.Ledger;

/// <summary>The definitions of RFC 9162 section 2.1, word for word and slow.</summary>
internal static class NaiveTree
{
    public static byte[] Hash(ReadOnlySpan<byte[]> leaves)
    {
        if (leaves.Length == 0)
        {
            return SHA256.HashData([]);
        }
        if (leaves.Length == 1)
        {
            return leaves[0];
        }
        var k = Split(leaves.Length);
        return SHA256.HashData([1, .. Hash(leaves[..k]), .. Hash(leaves[k..])]);
    }

    public static byte[][] Path(int m, ReadOnlySpan<byte[]> leaves)
    {
        if (leaves.Length == 1)
        {
            return [];
        }
        var k = Split(leaves.Length);
        return m < k
            ? [.. Path(m, leaves[..k]), Hash(leaves[k..])]
            : [.. Path(m - k, leaves[k..]), Hash(leaves[..k])];
    }

    public static byte[][] Consistency(int m, ReadOnlySpan<byte[]> leaves) =>
        SubProof(m, leaves, true);

    private static byte[][] SubProof(int m, ReadOnlySpan<byte[]> leaves, bool complete)
    {
        if (m == leaves.Length)
        {
            return complete ? [] : [Hash(leaves)];
        }
        var k = Split(leaves.Length);
        return m <= k
            ? [.. SubProof(m, leaves[..k], complete), Hash(leaves[k..])]
            : [.. SubProof(m - k, leaves[k..], false), Hash(leaves[..k])];
    }

    private static int Split(int n)
    {
        var k = 1;
        while (2 * k < n)
        {
            k *= 2;
        }
        return k;
    }
}
