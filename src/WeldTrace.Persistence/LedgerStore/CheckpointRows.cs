using System.Text;
using WeldTrace.Domain.Ledger;

namespace WeldTrace.Persistence.LedgerStore;

/// <summary>A checkpoint as it was signed, with the key that verifies it.</summary>
public sealed class CheckpointRow
{
    public required long TreeSize { get; init; }

    public required DateTimeOffset At { get; init; }

    /// <summary>Canonical bytes of the checkpoint, as text.</summary>
    public required string Statement { get; init; }

    /// <summary>ECDSA signature over the statement, DER.</summary>
    public required byte[] Signature { get; init; }

    public required string PublicKeyPem { get; init; }

    public byte[] StatementBytes() => Encoding.UTF8.GetBytes(Statement);

    /// <exception cref="FormatException">The statement is no checkpoint any more.</exception>
    public Checkpoint Read() => Checkpoint.FromCanonicalBytes(StatementBytes());

    public static CheckpointRow Of(SignedCheckpoint signed, SitePublicKey key)
    {
        ArgumentNullException.ThrowIfNull(signed);
        ArgumentNullException.ThrowIfNull(key);
        return new CheckpointRow
        {
            TreeSize = signed.Checkpoint.TreeSize,
            At = signed.Checkpoint.At,
            Statement = Encoding.UTF8.GetString(signed.Checkpoint.ToCanonicalBytes()),
            Signature = signed.Signature,
            PublicKeyPem = key.Pem,
        };
    }
}

/// <summary>A time stamp of RFC 3161 over a checkpoint's statement.</summary>
public sealed class CheckpointStampRow
{
    public required long TreeSize { get; init; }

    /// <summary>Time that the service states.</summary>
    public required DateTimeOffset At { get; init; }

    public required string Service { get; init; }

    /// <summary>The token, DER of a CMS SignedData.</summary>
    public required byte[] Token { get; init; }
}
