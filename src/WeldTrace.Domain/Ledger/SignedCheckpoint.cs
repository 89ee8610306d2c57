namespace WeldTrace.Domain.Ledger;

/// <summary>A checkpoint and the site's signature over its canonical bytes.</summary>
/// <param name="Checkpoint">What was signed.</param>
/// <param name="Signature">ECDSA signature, DER.</param>
public sealed record SignedCheckpoint(Checkpoint Checkpoint, byte[] Signature);
