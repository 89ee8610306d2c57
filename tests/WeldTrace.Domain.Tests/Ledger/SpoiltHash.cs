namespace WeldTrace.Domain.Tests.Ledger;

/// <summary>Ways to spoil a hash or a list of hashes.</summary>
internal static class SpoiltHash
{
    public static IEnumerable<(string How, byte[] Hash)> Of(byte[] hash)
    {
        yield return ("with its first bit turned", Turn(hash, 0));
        yield return ("with its last bit turned", Turn(hash, hash.Length - 1));
        yield return ("cut", hash[..^1]);
        yield return ("with a byte more", [.. hash, 0]);
    }

    public static IEnumerable<(string How, byte[][] Path)> Paths(byte[][] path, byte[] root)
    {
        yield return ("with an empty hash at its end", [.. path, []]);
        yield return ("with the root at its end", [.. path, root]);
        yield return ("with the root before it", [root, .. path]);
        if (path.Length == 0)
        {
            yield break;
        }
        yield return ("removed", []);
        yield return ("without its end", path[..^1]);
        yield return ("without its start", path[1..]);
        yield return ("with its end twice", [.. path, path[^1]]);
        for (var i = 0; i < path.Length; i++)
        {
            foreach (var (how, hash) in Of(path[i]))
            {
                yield return ($"{i} {how}", [.. path[..i], hash, .. path[(i + 1)..]]);
            }
        }
        if (path.Length > 1)
        {
            yield return ("turned round", [.. path.Reverse()]);
        }
    }

    private static byte[] Turn(byte[] hash, int at)
    {
        var copy = (byte[])hash.Clone();
        copy[at] ^= 1;
        return copy;
    }
}
