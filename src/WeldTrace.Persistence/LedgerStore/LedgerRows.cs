using WeldTrace.Domain.Ledger;

namespace WeldTrace.Persistence.LedgerStore;

/// <summary>One ledger entry: its canonical bytes as text, with what is needed to find it.</summary>
public sealed class LedgerRow
{
    public required long Number { get; init; }

    public required string RecordKind { get; init; }

    public required Guid RecordId { get; init; }

    public required int RecordVersion { get; init; }

    public required Guid[] Vessels { get; init; }

    public required DateTimeOffset At { get; init; }

    public required string Entry { get; init; }

    public required byte[] LeafHash { get; init; }
}

/// <summary>A completed node of the ledger's Merkle tree.</summary>
public sealed class LedgerNodeRow
{
    public required int Level { get; init; }

    public required long Position { get; init; }

    public required byte[] Hash { get; init; }
}

/// <summary>The single row that says how far the ledger goes; locking it puts all writers in one line.</summary>
public sealed class LedgerHead
{
    public const int OnlyId = 1;

    /// <summary>Makes the head of an empty ledger.</summary>
    public static string FirstRow { get; } =
        FormattableString.Invariant(
            $"INSERT INTO ledger_head (id, frontier) VALUES ({OnlyId}, '\\x{Convert.ToHexStringLower(MerkleFrontier.Empty.ToBytes())}')"
        );

    public required int Id { get; init; }

    public required byte[] Frontier { get; set; }
}
