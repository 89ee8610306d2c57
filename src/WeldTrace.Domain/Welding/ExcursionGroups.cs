using WeldTrace.Domain.Procedures;

namespace WeldTrace.Domain.Welding;

/// <summary>Excursions of several parameters that overlap in time: one thing that happened.</summary>
public static class ExcursionGroups
{
    /// <summary>The limit or warning that an excursion passed, in the unit of the window.</summary>
    public static decimal? LimitOf(this ParameterWindow window, LoggedExcursion excursion)
    {
        ArgumentNullException.ThrowIfNull(window);
        ArgumentNullException.ThrowIfNull(excursion);
        var phase = window.OtherPhases?.FirstOrDefault(p => p.Phase == excursion.Phase);
        return (excursion.IsWarning, excursion.IsAbove) switch
        {
            (true, true) => window.WarningUpper,
            (true, false) => window.WarningLower,
            (_, true) => phase?.Upper ?? window.Upper,
            _ => phase?.Lower ?? window.Lower,
        };
    }

    /// <summary>The groups in order of time; each holds at least one excursion, in order of time.</summary>
    public static IReadOnlyList<IReadOnlyList<LoggedExcursion>> Of(
        IEnumerable<LoggedExcursion> excursions
    )
    {
        List<List<LoggedExcursion>> groups = [];
        var end = double.NegativeInfinity;
        foreach (var excursion in excursions.OrderBy(e => e.StartSeconds))
        {
            if (groups.Count == 0 || excursion.StartSeconds > end)
            {
                groups.Add([]);
                end = double.NegativeInfinity;
            }

            groups[^1].Add(excursion);
            end = Math.Max(end, excursion.EndSeconds);
        }

        return groups;
    }
}
