namespace WeldTrace.Domain.Ledger;

/// <summary>The history bundle of one vessel inside a collection.</summary>
public sealed record CollectedBundle
{
    /// <summary>Serial number of the vessel; one line, 1 to 100 characters.</summary>
    public required string VesselSerial
    {
        get;
        init => field = LedgerText.Line(value, 100, nameof(VesselSerial));
    }

    /// <summary>The bundle as a file: its path, length and SHA-256.</summary>
    public required BundleFile File
    {
        get;
        init =>
            field = value.Path.StartsWith(CollectionPaths.Bundles, StringComparison.Ordinal)
                ? value
                : throw new ArgumentException("Bundles stand in their folder.", nameof(File));
    }
}
