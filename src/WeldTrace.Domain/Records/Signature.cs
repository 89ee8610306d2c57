using System.Text.Json.Serialization;

namespace WeldTrace.Domain.Records;

/// <summary>
/// A signature: who, in what meaning, when, and the SHA-256 of the canonical form of exactly one version of one record
/// (21 CFR 11.50 and 11.70 as a model). Never changed after it is made.
/// </summary>
public sealed class Signature : Record
{
    /// <summary>Longest meaning that is kept.</summary>
    public const int LongestMeaning = 200;

    private Signature(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "signature";

    /// <inheritdoc/>
    public override string Label => $"{PrintedName}: {Meaning}";

    /// <inheritdoc/>
    public override IReadOnlyList<Guid> ConcernedVessels => Vessels;

    /// <inheritdoc/>
    public override bool IsSealed => Version > 0;

    /// <summary>Kind of the signed record.</summary>
    public string SignedKind { get; private set; } = "";

    /// <summary>Identity of the signed record.</summary>
    public Guid SignedId { get; private set; }

    /// <summary>Version of the signed record.</summary>
    public int SignedVersion { get; private set; }

    /// <summary>SHA-256, in hexadecimal, of the canonical JSON of that version.</summary>
    public string SignedSha256 { get; private set; } = "";

    /// <summary>Vessels that the signed record concerns.</summary>
    public IReadOnlyList<Guid> Vessels { get; private set; } = [];

    /// <summary>Person who signed.</summary>
    public Guid PersonId { get; private set; }

    /// <summary>Name printed beside the signature.</summary>
    public string PrintedName { get; private set; } = "";

    /// <summary>What the signature means, as it was shown to the signer.</summary>
    public string Meaning { get; private set; } = "";

    /// <summary>UTC instant of signing.</summary>
    public DateTimeOffset At { get; private set; }

    /// <summary>The record being signed; known only until the signature is saved.</summary>
    [JsonIgnore]
    public Record? Target { get; private set; }

    /// <summary>Makes a signature over a record that is saved in the same transaction.</summary>
    /// <param name="target">The record, as it will be saved.</param>
    /// <param name="actor">Who signs, having proved it again by password.</param>
    /// <param name="meaning">What the signature means; 1 to 200 characters.</param>
    /// <param name="at">UTC instant.</param>
    public static Signature Of(Record target, Actor actor, string meaning, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(target);
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentException.ThrowIfNullOrWhiteSpace(meaning);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(meaning.Length, LongestMeaning);
        var signature = new Signature(Guid.CreateVersion7(at))
        {
            SignedKind = target.Kind,
            SignedId = target.Id,
            Vessels = [.. target.ConcernedVessels.Order()],
            PersonId = actor.PersonId,
            PrintedName = actor.PrintedName,
            Meaning = meaning,
            At = at,
            Target = target,
        };
        signature.Note(actor, at, "signed", meaning);
        return signature;
    }

    /// <summary>Called by the storage when the target's final form is known.</summary>
    /// <param name="version">Version of the signed record.</param>
    /// <param name="sha256">SHA-256 in lower-case hexadecimal, 64 characters.</param>
    public void Bind(int version, string sha256)
    {
        ArgumentNullException.ThrowIfNull(sha256);
        ArgumentOutOfRangeException.ThrowIfNotEqual(sha256.Length, 64);
        SignedVersion = version;
        SignedSha256 = sha256;
    }
}
