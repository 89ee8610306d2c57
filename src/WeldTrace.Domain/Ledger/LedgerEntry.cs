using System.Text;

namespace WeldTrace.Domain.Ledger;

/// <summary>
/// One change: who, when, what, why, and the whole record after it. Its canonical bytes are a leaf
/// of the ledger's tree, so nothing in it can change without being found.
/// </summary>
public sealed record LedgerEntry
{
    /// <summary>Largest integer that JSON carries exactly, 2^53 − 1.</summary>
    public const long LargestNumber = (1L << 53) - 1;

    /// <summary>0-based, without gaps; equals the leaf's index in the tree.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Below 0 or above 2^53 − 1.</exception>
    public required long Number
    {
        get;
        init
        {
            ArgumentOutOfRangeException.ThrowIfNegative(value, nameof(Number));
            ArgumentOutOfRangeException.ThrowIfGreaterThan(value, LargestNumber, nameof(Number));
            field = value;
        }
    }

    /// <summary>When, in UTC, cut to whole microseconds.</summary>
    public required DateTimeOffset At
    {
        get;
        init => field = LedgerTime.Normalise(value);
    }

    /// <summary>The account that acted.</summary>
    public required Guid ActorId { get; init; }

    /// <summary>Printed name of the person then; one line, 1 to 200 characters.</summary>
    public required string ActorName
    {
        get;
        init => field = LedgerText.Line(value, 200, nameof(ActorName));
    }

    /// <summary>What was done, in short words, such as "weld run ended"; 1 to 100 characters.</summary>
    public required string Act
    {
        get;
        init => field = LedgerText.Line(value, 100, nameof(Act));
    }

    /// <summary>Why, where a reason is asked for; up to 4000 characters.</summary>
    public string? Reason
    {
        get;
        init => field = value is null ? null : LedgerText.Paragraphs(value, 4000, nameof(Reason));
    }

    /// <summary>Kind of the record, such as "weld-run"; a-z, 0-9 and hyphen, 1 to 50 characters.</summary>
    public required string RecordKind
    {
        get;
        init => field = LedgerText.Kind(value, nameof(RecordKind));
    }

    /// <summary>The record that changed.</summary>
    public required Guid RecordId { get; init; }

    /// <summary>Version of the record after the change, from 1.</summary>
    public required int RecordVersion
    {
        get;
        init
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(value, 1, nameof(RecordVersion));
            field = value;
        }
    }

    /// <summary>Every vessel the entry speaks of, sorted, each once.</summary>
    public required IReadOnlyList<Guid> Vessels
    {
        get;
        init => field = [.. value.Distinct().Order()];
    }

    /// <summary>The whole record after the change: a JSON object, held as canonical text.</summary>
    /// <exception cref="ArgumentException">Not strict JSON, or not an object.</exception>
    public required string Content
    {
        get;
        init => field = RecordContent.Canonical(value, nameof(Content));
    }

    /// <summary>Hash of this entry as a leaf of the tree, 32 bytes.</summary>
    public byte[] LeafHash() => MerkleTree.LeafHash(ToCanonicalBytes());

    /// <summary>The entry as canonical JSON.</summary>
    public byte[] ToCanonicalBytes() => LedgerEntryJson.Write(this);

    /// <summary>Reads what <see cref="ToCanonicalBytes"/> wrote, and nothing else.</summary>
    /// <param name="utf8">Canonical bytes.</param>
    /// <exception cref="FormatException">Any other form, even with the same meaning.</exception>
    public static LedgerEntry FromCanonicalBytes(ReadOnlyMemory<byte> utf8) =>
        LedgerEntryJson.Read(utf8);

    /// <summary>Whether both entries have the same canonical bytes.</summary>
    /// <param name="other">The other entry.</param>
    public bool Equals(LedgerEntry? other) =>
        other is not null && ToCanonicalBytes().AsSpan().SequenceEqual(other.ToCanonicalBytes());

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Number, At, RecordId, RecordVersion);

    /// <summary>The canonical text.</summary>
    public override string ToString() => Encoding.UTF8.GetString(ToCanonicalBytes());
}
