using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Ledger;

/// <summary>A key of the site on record: from when it signs checkpoints and bundles, and when it ceased to.</summary>
public sealed class SigningKey : Record
{
    private SigningKey(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "signing-key";

    /// <inheritdoc/>
    public override string Label => Fingerprint;

    /// <summary>The public key, PEM.</summary>
    public string PublicKeyPem { get; private set; } = "";

    /// <summary>SHA-256 of the public key's SubjectPublicKeyInfo, lower-case hexadecimal.</summary>
    public string Fingerprint { get; private set; } = "";

    /// <summary>UTC instant from which the key signs.</summary>
    public DateTimeOffset Since { get; private set; }

    /// <summary>UTC instant from which it signs no more; null while it is in use.</summary>
    public DateTimeOffset? Until { get; private set; }

    /// <summary>Takes a key into use.</summary>
    /// <param name="key">Its public half.</param>
    /// <param name="actor">Who puts it on record.</param>
    /// <param name="at">UTC instant.</param>
    /// <param name="reason">Why, when it follows another key.</param>
    public static SigningKey TakeIntoUse(
        SitePublicKey key,
        Actor actor,
        DateTimeOffset at,
        string? reason = null
    )
    {
        ArgumentNullException.ThrowIfNull(key);
        var taken = new SigningKey(Guid.CreateVersion7(at))
        {
            PublicKeyPem = key.Pem,
            Fingerprint = key.Fingerprint,
            Since = at,
        };
        taken.Note(actor, at, "signing key taken into use", reason);
        return taken;
    }

    /// <summary>Another key takes its place.</summary>
    /// <param name="reason">Why; a retired key's signatures stay valid for what it signed before.</param>
    /// <param name="actor">Who changes the key.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome Retire(string? reason, Actor actor, DateTimeOffset at)
    {
        if (string.IsNullOrWhiteSpace(reason))
        {
            return Outcome.Refused("reason", "Say why the key is changed.", "Reason");
        }

        if (Until is not null)
        {
            return Outcome.Refused("retired", "This key is retired already; open the page anew.");
        }

        Until = at;
        Note(actor, at, "signing key retired", reason.Trim());
        return Outcome.Accepted;
    }
}
