using System.Security.Cryptography.Pkcs;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Ledger;

namespace WeldTrace.Persistence.LedgerStore;

/// <summary>Every checkpoint ever signed must still be a true statement about the ledger.</summary>
internal sealed class CheckpointCheck
{
    private readonly IReadOnlyList<CheckpointRow> _checkpoints;
    private readonly IReadOnlyList<CheckpointStampRow> _stamps;
    private readonly IReadOnlyList<SigningKey> _keys;

    private CheckpointCheck(
        IReadOnlyList<CheckpointRow> checkpoints,
        IReadOnlyList<CheckpointStampRow> stamps,
        IReadOnlyList<SigningKey> keys
    )
    {
        (_checkpoints, _stamps, _keys) = (checkpoints, stamps, keys);
        Sizes = checkpoints.Select(c => c.TreeSize).ToHashSet();
    }

    /// <summary>Sizes of the tree that checkpoints speak of.</summary>
    public IReadOnlySet<long> Sizes { get; }

    public static async Task<CheckpointCheck> ReadAsync(
        WeldTraceDbContext db,
        CancellationToken cancellation
    ) =>
        new(
            await db.Checkpoints.AsNoTracking().OrderBy(c => c.TreeSize).ToListAsync(cancellation),
            await db.CheckpointStamps.AsNoTracking().ToListAsync(cancellation),
            await db.SigningKeys.AsNoTracking().ToListAsync(cancellation)
        );

    /// <param name="size">Entries that are there.</param>
    /// <param name="roots">Roots that follow from the entries, by size.</param>
    public IEnumerable<string> FindProblems(long size, IReadOnlyDictionary<long, byte[]> roots) =>
        [
            .. _checkpoints
                .Select(c => FaultOf(c, size, roots))
                .OfType<string>()
                .Concat(_stamps.Where(s => !IsGenuine(s)).Select(NotGenuine)),
        ];

    private string? FaultOf(CheckpointRow row, long size, IReadOnlyDictionary<long, byte[]> roots)
    {
        var name = FormattableString.Invariant($"The checkpoint of {row.TreeSize} entries");
        if (!IsSigned(row) || Read(row) is not { } checkpoint || !IsFiledAs(checkpoint, row))
        {
            return $"{name} was changed: its signature no longer holds.";
        }

        if (checkpoint.TreeSize > size)
        {
            return FormattableString.Invariant(
                $"{name} speaks of more entries than are there ({size}): the end of the ledger was cut off."
            );
        }

        if (
            roots.TryGetValue(row.TreeSize, out var root)
            && !root.AsSpan().SequenceEqual(checkpoint.Root())
        )
        {
            return $"{name} was signed for other entries than those that are there.";
        }

        return IsOnRecord(row) ? null : $"{name} is signed with a key that is not on record.";
    }

    private static Checkpoint? Read(CheckpointRow row)
    {
        try
        {
            return row.Read();
        }
        catch (FormatException)
        {
            return null;
        }
    }

    private static bool IsFiledAs(Checkpoint checkpoint, CheckpointRow row) =>
        checkpoint.TreeSize == row.TreeSize && checkpoint.At == row.At;

    private static bool IsSigned(CheckpointRow row)
    {
        try
        {
            var key = SitePublicKey.FromPem(row.PublicKeyPem);
            return key.Verify(row.StatementBytes(), row.Signature);
        }
        catch (FormatException)
        {
            return false;
        }
    }

    private bool IsOnRecord(CheckpointRow row) =>
        _keys.Any(k => k.PublicKeyPem == row.PublicKeyPem && !(row.At > k.Until));

    private bool IsGenuine(CheckpointStampRow stamp) =>
        _checkpoints.FirstOrDefault(c => c.TreeSize == stamp.TreeSize) is { } stamped
        && Rfc3161TimestampToken.TryDecode(stamp.Token, out var token, out _)
        && token.VerifySignatureForData(stamped.StatementBytes(), out _)
        && LedgerTime.Normalise(token.TokenInfo.Timestamp) == stamp.At;

    private static string NotGenuine(CheckpointStampRow stamp) =>
        FormattableString.Invariant(
            $"The time stamp of the checkpoint of {stamp.TreeSize} entries was changed: it does not verify."
        );
}
