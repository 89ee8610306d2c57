using WeldTrace.Domain.Ledger;

namespace WeldTrace.Domain.Tests.Ledger;

/// <summary>An inclusion proof with its claim, and the ways to spoil it.</summary>
internal sealed record Proof(byte[] Leaf, long Index, long Size, byte[][] Path, byte[] Root)
{
    public bool Holds() => MerkleVerification.Inclusion(Leaf, Index, Size, Path, Root);

    public IEnumerable<(string How, Proof Proof)> Spoilt()
    {
        yield return ("next index", this with { Index = Index + 1 });
        yield return ("previous index", this with { Index = Index - 1 });
        yield return ("other side", this with { Index = Index ^ 2 });
        yield return ("size doubled", this with { Size = Size * 2 });
        yield return ("size zero", this with { Size = 0 });
        yield return ("size negative", this with { Size = -Size });
        yield return ("leaf empty", this with { Leaf = [] });
        yield return ("root empty", this with { Root = [] });
        yield return ("leaf and root empty", this with { Leaf = [], Root = [] });
        yield return ("root of nothing", this with { Root = MerkleTree.EmptyRoot() });
        foreach (var (how, leaf) in SpoiltHash.Of(Leaf))
        {
            yield return ("leaf " + how, this with { Leaf = leaf });
        }
        foreach (var (how, root) in SpoiltHash.Of(Root))
        {
            yield return ("root " + how, this with { Root = root });
        }
        foreach (var (how, path) in SpoiltHash.Paths(Path, Root))
        {
            yield return ("path " + how, this with { Path = path });
        }
    }
}
