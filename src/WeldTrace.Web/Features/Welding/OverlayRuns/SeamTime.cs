using WeldTrace.Domain.Welding;

namespace WeldTrace.Web.Features.Welding.OverlayRuns;

/// <summary>From the time of a run to the place on its seam and back, straight between the places that the run kept.</summary>
internal static class SeamTime
{
    /// <summary>Way along the seam in m at a time; before the first place that of the first, after the last that of the last.</summary>
    /// <param name="places">Places in order of time, one or more.</param>
    /// <param name="seconds">Time as logged.</param>
    public static double PlaceAt(IReadOnlyList<LoggedPlace> places, double seconds) =>
        Between(places, seconds, p => p.Seconds, p => p.Metres);

    /// <summary>Time as logged at which a place was reached first.</summary>
    /// <param name="places">Places in order of time, one or more.</param>
    /// <param name="metres">Way along the seam.</param>
    public static double TimeAt(IReadOnlyList<LoggedPlace> places, double metres) =>
        Between(places, metres, p => p.Metres, p => p.Seconds);

    private static double Between(
        IReadOnlyList<LoggedPlace> places,
        double at,
        Func<LoggedPlace, double> key,
        Func<LoggedPlace, double> value
    )
    {
        var (low, high) = (0, places.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = key(places[middle]) < at ? (middle + 1, high) : (low, middle);
        }

        if (low == 0 || low == places.Count)
        {
            return value(places[Math.Min(low, places.Count - 1)]);
        }

        var (a, b) = (places[low - 1], places[low]);
        var share = (at - key(a)) / (key(b) - key(a));
        return value(a) + (share * (value(b) - value(a)));
    }
}
