using WeldTrace.Domain.Ledger;
using Xunit;

namespace WeldTrace.Domain.Tests.Ledger;

/// <summary>The example of RFC 9162 section 2.1.5, with its letters.</summary>
public sealed class MerkleSevenLeavesTests
{
    private static readonly byte[][] D =
    [
        .. Enumerable.Range(0, 7).Select(i => MerkleTree.LeafHash([(byte)i])),
    ];

    private static readonly Dictionary<char, byte[]> Named = NameNodes();

    [Theory]
    [InlineData(0, "bhl")]
    [InlineData(3, "cgl")]
    [InlineData(4, "fjk")]
    [InlineData(6, "ik")]
    public void Inclusion_ExampleLeaf_IsThePathOfTheExample(long index, string letters)
    {
        var path = MerkleProofs.Inclusion(index, 7, Node);

        Assert.Equal(letters.Select(letter => Named[letter]), path);
        Assert.True(MerkleVerification.Inclusion(D[index], index, 7, path, MerkleTree.Root(D)));
    }

    [Theory]
    [InlineData(3, "cdgl")]
    [InlineData(4, "l")]
    [InlineData(6, "ijk")]
    public void Consistency_ExampleSize_IsThePathOfTheExample(int first, string letters)
    {
        var path = MerkleProofs.Consistency(first, 7, Node);

        Assert.Equal(letters.Select(letter => Named[letter]), path);
        Assert.True(
            MerkleVerification.Consistency(
                first,
                7,
                path,
                MerkleTree.Root(D[..first]),
                MerkleTree.Root(D)
            )
        );
    }

    private static Dictionary<char, byte[]> NameNodes()
    {
        var named = new Dictionary<char, byte[]>
        {
            ['a'] = D[0],
            ['b'] = D[1],
            ['c'] = D[2],
            ['d'] = D[3],
            ['e'] = D[4],
            ['f'] = D[5],
            ['j'] = D[6],
        };
        named['g'] = MerkleTree.NodeHash(named['a'], named['b']);
        named['h'] = MerkleTree.NodeHash(named['c'], named['d']);
        named['i'] = MerkleTree.NodeHash(named['e'], named['f']);
        named['k'] = MerkleTree.NodeHash(named['g'], named['h']);
        named['l'] = MerkleTree.NodeHash(named['i'], named['j']);
        return named;
    }

    private static byte[] Node(int level, long index) =>
        level switch
        {
            0 => D[index],
            1 => Named["ghi"[(int)index]],
            _ => Named["k"[(int)index]],
        };
}
