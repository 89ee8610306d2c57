namespace WeldTrace.Documents;

/// <summary>The ledger as the site's key signed it last before a document was printed; paper that is kept vouches for it.</summary>
/// <param name="Entries">Entries signed for.</param>
/// <param name="RootHex">Root of the tree over them, 64 hexadecimal digits.</param>
/// <param name="SignedAt">When it was signed.</param>
public sealed record SignedLedger(long Entries, string RootHex, DateTimeOffset SignedAt);
