using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Welding;

// Where the run was when.
public sealed partial class WeldRun
{
    /// <summary>
    /// When the tool passed a place, in seconds of the log's own time, by its path as logged; in logs judged before that was kept, taking the
    /// travel as uniform. Null when it did not pass there, or there is no log.
    /// </summary>
    /// <param name="angle">Angle along the travel from the start of the pass.</param>
    public double? SecondsAt(Angle angle)
    {
        var metres = TrackRadius.Metres * (angle - From).Radians;
        return Log?.Places is { Count: > 1 } places ? Passed(places, metres) : Uniformly(metres);
    }

    private static double? Passed(IReadOnlyList<LoggedPlace> places, double metres)
    {
        for (var i = 1; i < places.Count; i++)
        {
            var (from, to) = (places[i - 1], places[i]);
            if (metres >= from.Metres && metres <= to.Metres && to.Metres > from.Metres)
            {
                var part = (metres - from.Metres) / (to.Metres - from.Metres);
                return from.Seconds + (part * (to.Seconds - from.Seconds));
            }
        }

        return null;
    }

    private double? Uniformly(double metres)
    {
        LoggedPhase[] travel = [.. Log?.Phases.Where(p => p.IsTravel) ?? []];
        if (travel.Length == 0 || Travelled is not { } travelled || travelled <= Length.Zero)
        {
            return null;
        }

        var (from, to) = (travel[0].StartSeconds, travel[^1].EndSeconds);
        var part = metres / travelled.Metres;
        return part is >= 0 and <= 1 ? from + (part * (to - from)) : null;
    }
}
