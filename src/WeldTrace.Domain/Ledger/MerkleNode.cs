namespace WeldTrace.Domain.Ledger;

/// <summary>Root of a perfect subtree: it covers leaves Index·2^Level to (Index+1)·2^Level − 1.</summary>
/// <param name="Level">0 for a leaf.</param>
/// <param name="Index">0-based position among the nodes of its level.</param>
/// <param name="Hash">32 bytes.</param>
public sealed record MerkleNode(int Level, long Index, byte[] Hash);
