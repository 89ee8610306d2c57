namespace WeldTrace.TestSupport.Filling;

/// <summary>A record that many copied vessels have in common, such as a tool or a lot of material.</summary>
/// <param name="Id">The record of the vessel that is copied.</param>
/// <param name="Which">Number of the record that the copy of this number has; 0 and above.</param>
public sealed record SharedRecord(Guid Id, Func<long, long> Which)
{
    /// <summary>Table in which a row is copied for each of the numbers; null when nothing looks the record up.</summary>
    public string? Table { get; init; }

    /// <summary>The record changes after so many vessels.</summary>
    public static SharedRecord ChangesEvery(Guid id, int vessels) => new(id, n => n / vessels);

    /// <summary>The record is one of so many that are in use side by side.</summary>
    public static SharedRecord OneOf(Guid id, int many) => new(id, n => n % many);
}

/// <summary>What <see cref="ManyVessels"/> fills a database with.</summary>
/// <param name="Serial">Serial number of the vessel that is copied; its records are copied with it.</param>
/// <param name="Count">How many copies.</param>
public sealed record Filling(string Serial, int Count)
{
    /// <summary>Copies are spread evenly over this time before the vessel's own.</summary>
    public TimeSpan Span { get; init; } = TimeSpan.FromDays(5 * 365);

    /// <summary>Records that copies have in common; every other record of the vessel is a copy of its own.</summary>
    public IReadOnlyList<SharedRecord> Shared { get; init; } = [];

    /// <summary>Tables whose rows are copied beside the vessel's own; null copies everything that is recorded about it.</summary>
    public IReadOnlySet<string>? Tables { get; init; }

    /// <summary>How many other vessels get a record of the same kind between two of one vessel, as where many are in work at once.</summary>
    public int Between { get; init; }

    /// <summary>What is done to the copies before their indexes are made.</summary>
    public IReadOnlyList<string> Then { get; init; } = [];

    /// <summary>Serial number of a copy, counted from 0; as long as the one of the vessel, since it stands in texts of known length.</summary>
    public string SerialOf(long copy) =>
        "M"
        + copy.ToString(System.Globalization.CultureInfo.InvariantCulture)
            .PadLeft(Serial.Length - 1, '0');
}
