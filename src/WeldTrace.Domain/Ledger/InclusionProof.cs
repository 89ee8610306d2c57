namespace WeldTrace.Domain.Ledger;

/// <summary>Proves that an entry is in the tree of a checkpoint.</summary>
/// <param name="Number">Number of the entry, which is the index of its leaf.</param>
/// <param name="Path">Sibling hashes from the leaf up, 32 bytes each.</param>
public sealed record InclusionProof(long Number, IReadOnlyList<byte[]> Path);
