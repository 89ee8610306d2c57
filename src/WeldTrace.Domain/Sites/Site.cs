using WeldTrace.Domain.Archiving;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Sites;

/// <summary>Units in which values are entered and shown; storage is always SI.</summary>
public enum UnitSystem
{
    /// <summary>mm, mm/min, kN, bar, °C.</summary>
    Metric,

    /// <summary>in, in/min, lbf, psi, °F.</summary>
    InchPound,
}

/// <summary>The site: the name that heads screens and documents, its time zone and its units.</summary>
public sealed class Site : Record
{
    /// <summary>Longest name.</summary>
    public const int LongestName = 80;

    private Site(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "site";

    /// <inheritdoc/>
    public override string Label => Name;

    /// <summary>Name that heads screens and documents.</summary>
    public string Name { get; private set; } = "";

    /// <summary>IANA time zone in which instants are shown.</summary>
    public string TimeZoneId { get; private set; } = "UTC";

    /// <summary>Preferred units.</summary>
    public UnitSystem Units { get; private set; }

    /// <summary>Whether the site holds invented demonstration data.</summary>
    public bool IsDemonstration { get; private set; }

    /// <summary>Weakest inspection document that a material lot may have at this site; null when the site asks for none.</summary>
    public InspectionDocumentType? RequiredDocument { get; private set; }

    /// <summary>Years that the records of a vessel are kept whole at least, 5 to 100; null when the site adds nothing to the published rules.</summary>
    public int? RetentionYears { get; private set; }

    /// <summary>The time zone of <see cref="TimeZoneId"/>.</summary>
    public TimeZoneInfo TimeZone => TimeZoneInfo.FindSystemTimeZoneById(TimeZoneId);

    /// <summary>The day that an instant falls on at the site.</summary>
    public DateOnly DayOf(DateTimeOffset instant) =>
        DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(instant, TimeZone).DateTime);

    /// <summary>The instant, in UTC, at which a day begins at the site.</summary>
    public DateTimeOffset BeginOf(DateOnly day)
    {
        var local = day.ToDateTime(TimeOnly.MinValue);
        return new DateTimeOffset(local, TimeZone.GetUtcOffset(local)).ToUniversalTime();
    }

    /// <summary>Sets up the site, once.</summary>
    /// <param name="name">1 to 80 characters.</param>
    /// <param name="timeZoneId">IANA identifier known to this machine.</param>
    /// <param name="units">Preferred units.</param>
    /// <param name="isDemonstration">Whether the data is invented.</param>
    /// <param name="actor">First administrator.</param>
    /// <param name="at">UTC instant.</param>
    public static Outcome<Site> SetUp(
        string name,
        string timeZoneId,
        UnitSystem units,
        bool isDemonstration,
        Actor actor,
        DateTimeOffset at
    )
    {
        var refusals = FaultsOf(name, timeZoneId);
        if (refusals.Count > 0)
        {
            return refusals.ToList();
        }

        var site = new Site(Guid.CreateVersion7(at))
        {
            Name = name.Trim(),
            TimeZoneId = timeZoneId,
            Units = units,
            IsDemonstration = isDemonstration,
        };
        site.Note(actor, at, "site set up");
        return site;
    }

    /// <summary>Changes name, time zone or units.</summary>
    public Outcome Change(
        string name,
        string timeZoneId,
        UnitSystem units,
        Actor actor,
        DateTimeOffset at
    )
    {
        var refusals = FaultsOf(name, timeZoneId);
        if (refusals.Count > 0)
        {
            return Outcome.From(refusals);
        }

        (Name, TimeZoneId, Units) = (name.Trim(), timeZoneId, units);
        Note(actor, at, "site settings changed");
        return Outcome.Accepted;
    }

    /// <summary>Says which inspection document every material lot must have, whatever the designs ask for.</summary>
    public void RequireDocument(InspectionDocumentType? weakest, Actor actor, DateTimeOffset at)
    {
        if (weakest != RequiredDocument)
        {
            RequiredDocument = weakest;
            Note(
                actor,
                at,
                "required inspection document changed",
                weakest is { } type ? InspectionDocuments.Word(type) : "none"
            );
        }
    }

    /// <summary>Says for how long the records of vessels are kept whole, beside the published rules.</summary>
    /// <param name="years">Whole years, 5 to 100; null to add nothing.</param>
    /// <param name="actor">Administrator.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome KeepRecordsFor(int? years, Actor actor, DateTimeOffset at)
    {
        if (years is < Retention.FewestSiteYears or > Retention.MostSiteYears)
        {
            return Outcome.Refused(
                "retention",
                $"Give {Retention.FewestSiteYears} to {Retention.MostSiteYears} years, or leave the field empty.",
                nameof(RetentionYears)
            );
        }

        if (years != RetentionYears)
        {
            RetentionYears = years;
            Note(
                actor,
                at,
                "retention of records changed",
                years is { } set ? FormattableString.Invariant($"{set} years") : "published rules"
            );
        }

        return Outcome.Accepted;
    }

    /// <summary>What is wrong with a name and a time zone; empty when nothing is.</summary>
    /// <param name="name">Name of the site; 1 to <see cref="LongestName"/> characters.</param>
    /// <param name="timeZoneId">IANA name of the time zone.</param>
    public static IReadOnlyList<Refusal> FaultsOf(string? name, string? timeZoneId)
    {
        List<Refusal> refusals = [];
        if (string.IsNullOrWhiteSpace(name) || name.Length > LongestName)
        {
            refusals.Add(
                new Refusal(
                    "site-name",
                    $"Give the site's name, 1 to {LongestName} characters.",
                    nameof(Name)
                )
            );
        }

        if (!TimeZoneInfo.TryFindSystemTimeZoneById(timeZoneId ?? "", out _))
        {
            refusals.Add(
                new Refusal(
                    "time-zone",
                    $"The time zone '{timeZoneId}' is not known; choose one from the list.",
                    nameof(TimeZoneId)
                )
            );
        }

        return refusals;
    }
}
