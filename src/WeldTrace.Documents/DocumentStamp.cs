namespace WeldTrace.Documents;

/// <summary>What every printed document says about itself; all of it is input, so that the same record prints the same text.</summary>
public sealed record DocumentStamp
{
    /// <summary>The workshop's own name, as entered at first run.</summary>
    public required string SiteName { get; init; }

    /// <summary>The person who printed the document.</summary>
    public required string PrintedBy { get; init; }

    /// <summary>The instant of printing, from the application's clock.</summary>
    public required DateTimeOffset PrintedAt { get; init; }

    /// <summary>The site's time zone; every time in the document is shown in it.</summary>
    public required TimeZoneInfo TimeZone { get; init; }

    /// <summary>The ledger as it was signed last; null before the first checkpoint.</summary>
    public SignedLedger? Ledger { get; init; }

    /// <summary>The units in which typed quantities are shown; texts are printed as they are given.</summary>
    public UnitSystem Units { get; init; } = UnitSystem.Metric;
}
