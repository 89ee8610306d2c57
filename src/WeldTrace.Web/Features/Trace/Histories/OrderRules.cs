using WeldTrace.Domain.Records;

namespace WeldTrace.Web.Features.Trace.Histories;

/// <summary>Which orders the line takes.</summary>
internal static class OrderRules
{
    /// <summary>What is said when the disk has no room.</summary>
    public static Refusal NoRoom { get; } =
        new(
            "no-room",
            "The disk of the site has no room for these histories. Delete files of other orders, or ask whoever runs the site for more room, and order again."
        );

    /// <summary>The reason against an order; null when there is none.</summary>
    public static Refusal? Against(
        IEnumerable<HistoryOrder> orders,
        IReadOnlyList<string> serials,
        Actor actor
    )
    {
        var unfinished = orders.Where(o => o.IsUnfinished).ToList();
        if (serials.Count == 0)
        {
            return new("none", "No vessel is ticked. Tick at least one, or order all.");
        }

        if (serials.Count > HistorySettings.MostVessels)
        {
            return new(
                "too-many",
                $"These are {serials.Count} vessels; one order takes {HistorySettings.MostVessels}. Choose fewer, and order the others afterwards."
            );
        }

        if (
            unfinished.Count(o => o.OrderedById == actor.PersonId)
            >= HistorySettings.MostOfOnePerson
        )
        {
            return new(
                "own-line",
                $"{HistorySettings.MostOfOnePerson} orders of yours are not ready yet. Wait for one of them, or cancel one."
            );
        }

        return unfinished.Count >= HistorySettings.LongestLine
            ? new(
                "line",
                $"{HistorySettings.LongestLine} orders are waiting, the most that the site takes. Order again when one of them is ready."
            )
            : null;
    }
}
