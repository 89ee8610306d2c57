using WeldTrace.Engineering.Paths;

namespace WeldTrace.Web.Reading;

/// <summary>What two concentric passes do to each other, in words.</summary>
public static class ConcentricPairs
{
    public static string Statement(CircularPassLayout one, CircularPassLayout other)
    {
        ArgumentNullException.ThrowIfNull(one);
        ArgumentNullException.ThrowIfNull(other);
        var (inner, outer) =
            one.Pass.TrackRadius <= other.Pass.TrackRadius
                ? (one.Pass, other.Pass)
                : (other.Pass, one.Pass);
        var pair = ConcentricPair.Compare(inner, outer);
        return pair.IsRefused
            ? string.Join(" ", pair.Refusals.Select(r => $"{r.Where}: {r.What}"))
            : pair.Value.Statement;
    }
}
