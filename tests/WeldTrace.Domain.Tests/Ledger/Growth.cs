using WeldTrace.Domain.Ledger;

namespace WeldTrace.Domain.Tests.Ledger;

/// <summary>A consistency proof with its claim, and the ways to spoil it.</summary>
internal sealed record Growth(
    long First,
    long Second,
    byte[][] Path,
    byte[] FirstRoot,
    byte[] SecondRoot
)
{
    public bool Holds() =>
        MerkleVerification.Consistency(First, Second, Path, FirstRoot, SecondRoot);

    public IEnumerable<(string How, Growth Growth)> Spoilt()
    {
        yield return ("sizes swapped or below zero", this with { First = -First });
        yield return ("first too large", this with { First = Second + 1 });
        yield return ("first zero", this with { First = 0 });
        yield return ("second doubled", this with { Second = Second * 2 + 1 });
        yield return ("roots empty", this with { FirstRoot = [], SecondRoot = [] });
        foreach (var (how, root) in SpoiltHash.Of(FirstRoot))
        {
            yield return ("first root " + how, this with { FirstRoot = root });
        }
        foreach (var (how, root) in SpoiltHash.Of(SecondRoot))
        {
            yield return ("second root " + how, this with { SecondRoot = root });
        }
        foreach (var (how, path) in SpoiltHash.Paths(Path, SecondRoot))
        {
            yield return ("path " + how, this with { Path = path });
        }
    }
}
