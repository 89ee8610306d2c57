using System.Globalization;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Sites;
using WeldTrace.Web.Components.Tables;

namespace WeldTrace.Web.Features.Findings.Contain;

/// <summary>What is searched for, as the address says it.</summary>
public sealed record ContainmentQuery(
    IReadOnlyList<SharedThing> Shared,
    DateOnly From,
    DateOnly Until
)
{
    public const string FromFilter = "from";
    public const string UntilFilter = "until";

    /// <summary>Days before and after the vessel's own welds that are searched when nothing else is asked.</summary>
    public const int DaysAround = 14;

    /// <summary>First instant of the window at the site.</summary>
    public DateTimeOffset Begins(Site site) => site.BeginOf(From);

    /// <summary>First instant after the window.</summary>
    public DateTimeOffset Ends(Site site) => site.BeginOf(Until.AddDays(1));

    /// <param name="query">Address of the page.</param>
    /// <param name="first">Day of the vessel's first weld.</param>
    /// <param name="last">Day of its last.</param>
    public static ContainmentQuery Read(TableQuery query, DateOnly first, DateOnly last)
    {
        ArgumentNullException.ThrowIfNull(query);
        var asked = Enum.GetValues<SharedThing>()
            .Where(t => query.Filter(Name(t)).Length > 0)
            .ToList();
        return new(
            asked.Count > 0
                ? asked
                : [SharedThing.Tool, SharedThing.MaterialLot, SharedThing.Instrument],
            Day(query.Filter(FromFilter)) ?? first.AddDays(-DaysAround),
            Day(query.Filter(UntilFilter)) ?? last.AddDays(DaysAround)
        );
    }

    /// <summary>Name of the field of a thing.</summary>
    public static string Name(SharedThing thing) => thing.ToString().ToLowerInvariant();

    private static DateOnly? Day(string text) =>
        DateOnly.TryParseExact(
            text,
            "yyyy-MM-dd",
            CultureInfo.InvariantCulture,
            DateTimeStyles.None,
            out var day
        ) && day.Year is > 1900 and < 9000
            ? day
            : null;
}
