using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;

namespace WeldTrace.Domain.Archiving;

/// <summary>A rule that says how long the records of a vessel are kept whole.</summary>
/// <param name="Word">What is kept by it.</param>
/// <param name="Years">Whole years; null for ever.</param>
/// <param name="Source">Where the rule comes from.</param>
public sealed record RetentionRule(string Word, int? Years, string Source);

/// <summary>What of a vessel decides how long its records are kept.</summary>
/// <param name="LastActOn">Day of the last act on the vessel, or on any vessel of its production lot.</param>
/// <param name="WasRepaired">Whether a weld of it was repaired.</param>
/// <param name="OpenFindings">Findings of it that are not closed.</param>
/// <param name="SiteYears">Years that the site keeps all records; null when it sets none.</param>
public sealed record RetentionFacts(
    DateOnly LastActOn,
    bool WasRepaired,
    int OpenFindings,
    int? SiteYears
);

/// <summary>Until when the records of a vessel are kept whole, by the longest of the rules that concern it.</summary>
public sealed class Retention
{
    /// <summary>Fewest years that a site may set: less would be below the shortest rule.</summary>
    public const int FewestSiteYears = 5;

    /// <summary>Most years that a site may set.</summary>
    public const int MostSiteYears = 100;

    // Both from memory; the numbers of clause and annex are of the editions of 2021 and 2014.
    private static readonly RetentionRule QualityRecords = new(
        "quality records of welding",
        5,
        "ISO 3834-2, clause 18 (from memory)"
    );

    private static readonly RetentionRule TechnicalFile = new(
        "technical file of pressure equipment",
        10,
        "Directive 2014/68/EU, Annex III (from memory)"
    );

    private static readonly RetentionRule Repairs = new(
        "records of repaired welds",
        null,
        "NASA-STD-5006A, GWR 117"
    );

    private readonly VesselState _state;
    private readonly int _openFindings;

    private Retention(Vessel vessel, RetentionFacts facts)
    {
        (_state, _openFindings) = (vessel.State, facts.OpenFindings);
        CountedFrom = facts.LastActOn;
        Rules =
        [
            QualityRecords,
            TechnicalFile,
            .. facts.WasRepaired ? [Repairs] : Array.Empty<RetentionRule>(),
            .. facts.SiteYears is { } years
                ? [new RetentionRule("all records of the site", years, "site settings")]
                : Array.Empty<RetentionRule>(),
        ];
    }

    /// <summary>Years for which the records of any vessel are kept at least.</summary>
    /// <param name="siteYears">Years that the site sets; null when it sets none.</param>
    public static int FewestYears(int? siteYears) =>
        Math.Max(TechnicalFile.Years!.Value, siteYears ?? 0);

    /// <summary>The rules that concern the vessel.</summary>
    public IReadOnlyList<RetentionRule> Rules { get; }

    /// <summary>Day from which the years are counted.</summary>
    public DateOnly CountedFrom { get; }

    /// <summary>The rule that keeps longest.</summary>
    public RetentionRule Longest => Rules.MaxBy(r => r.Years ?? int.MaxValue)!;

    /// <summary>Last day of keeping; null when the records are kept for ever.</summary>
    public DateOnly? KeptUntil => Longest.Years is { } years ? CountedFrom.AddYears(years) : null;

    /// <summary>Applies the rules to a vessel.</summary>
    /// <param name="vessel">Vessel.</param>
    /// <param name="facts">What else decides.</param>
    public static Retention Of(Vessel vessel, RetentionFacts facts)
    {
        ArgumentNullException.ThrowIfNull(vessel);
        ArgumentNullException.ThrowIfNull(facts);
        return new(vessel, facts);
    }

    /// <summary>Every reason why the records may not be archived on a day; none when they may.</summary>
    /// <param name="today">The day.</param>
    public IReadOnlyList<Refusal> Against(DateOnly today) =>
        new Checks()
            .That(
                _state is VesselState.Shipped or VesselState.Expended or VesselState.Scrapped,
                "state",
                $"The vessel is {Vessel.StateWord(_state)}; only one that is shipped, expended or scrapped is archived."
            )
            .That(
                _openFindings == 0,
                "findings",
                $"Findings of it that are not closed: {_openFindings}. Close them first."
            )
            .That(
                Longest.Years is not null,
                "retention",
                $"The {Longest.Word} are kept for ever.",
                null,
                Longest.Source
            )
            .That(
                KeptUntil is not { } until || today > until,
                "retention",
                FormattableString.Invariant(
                    $"Its records are kept whole up to {KeptUntil:yyyy-MM-dd}: {Longest.Word}, {Longest.Years} years from the last act on it or its lot, {CountedFrom:yyyy-MM-dd}."
                ),
                null,
                Longest.Source
            )
            .Refusals;
}
