using WeldTrace.Domain.Ledger;

namespace WeldTrace.Documents.Bundle;

/// <summary>One record: its kind, as ledger entries name it, and its content as JSON.</summary>
public sealed record BundledRecord(string Kind, Guid Id, string Json);

/// <summary>One ledger entry with the path that proves it to be in the checkpoint's tree.</summary>
public sealed record BundledEntry(LedgerEntry Entry, IReadOnlyList<byte[]> Path);

/// <summary>One process log; the delegate writes it as CSV, always with the same bytes.</summary>
public sealed record BundledLog(Guid RunId, Func<Stream, CancellationToken, Task> WriteCsv);

/// <summary>One photograph or certificate; the delegate writes its bytes.</summary>
public sealed record BundledAttachment(
    string Sha256,
    string FileName,
    string MediaType,
    Func<Stream, CancellationToken, Task> Write
);
