using WeldTrace.Domain.Ledger;

namespace WeldTrace.Documents.Bundle;

/// <summary>Everything that goes into the history bundle of one vessel.</summary>
public sealed record HistoryBundleInput
{
    public required string VesselSerial { get; init; }

    public required Guid VesselId { get; init; }

    public required string SiteName { get; init; }

    public required DateTimeOffset MadeAt { get; init; }

    public required ReadOnlyMemory<byte> TravelerPdf { get; init; }

    /// <summary>The history book; null to leave it out.</summary>
    public ReadOnlyMemory<byte>? BookPdf { get; init; }

    /// <summary>What happened to the vessel, as EPCIS 2.0.</summary>
    public required ReadOnlyMemory<byte> Events { get; init; }

    /// <summary>What was made from what, as PROV-JSON.</summary>
    public required ReadOnlyMemory<byte> Lineage { get; init; }

    /// <summary>What is asked of the vessel and what shows it, as JSON.</summary>
    public required ReadOnlyMemory<byte> Compliance { get; init; }

    /// <summary>The same as CSV.</summary>
    public required ReadOnlyMemory<byte> ComplianceTable { get; init; }

    /// <summary>The newest version of every record that speaks of the vessel, and of what they rest on.</summary>
    public required IReadOnlyList<BundledRecord> Records { get; init; }

    /// <summary>Every ledger entry of those records.</summary>
    public required IReadOnlyList<BundledEntry> Entries { get; init; }

    /// <summary>The state of the ledger that the entries' proofs lead to, signed by the same key.</summary>
    public required SignedCheckpoint Checkpoint { get; init; }

    public required IReadOnlyList<BundledLog> Logs { get; init; }

    public required IReadOnlyList<BundledAttachment> Attachments { get; init; }
}
