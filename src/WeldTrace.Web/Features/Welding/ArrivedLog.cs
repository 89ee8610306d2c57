namespace WeldTrace.Web.Features.Welding;

/// <summary>A process log that a machine sent by itself and that no run has taken yet; also while it is still arriving.</summary>
/// <param name="Id">Identity of the arrival.</param>
/// <param name="MachineId">Machine that sent it.</param>
/// <param name="FileName">Name of the file, cleaned.</param>
/// <param name="Length">Length that was announced, in bytes.</param>
/// <param name="Sha256">SHA-256 that was announced, hexadecimal.</param>
/// <param name="BegunAt">UTC instant of its first byte.</param>
/// <param name="ArrivedAt">UTC instant at which it was whole; null until then.</param>
public sealed record ArrivedLog(
    Guid Id,
    Guid MachineId,
    string FileName,
    long Length,
    string Sha256,
    DateTimeOffset BegunAt,
    DateTimeOffset? ArrivedAt
);

/// <summary>What came of a piece that was sent.</summary>
/// <param name="Offset">Bytes that are kept for good; the next piece starts there.</param>
public abstract record PieceResult(long Offset)
{
    /// <summary>The piece is kept.</summary>
    public sealed record Kept(long Offset) : PieceResult(Offset);

    /// <summary>The piece does not start where the last one ended, or goes past the announced length.</summary>
    public sealed record Misplaced(long Offset) : PieceResult(Offset);

    /// <summary>The file is there, and its bytes don't give the announced hash: it was thrown away.</summary>
    public sealed record Damaged() : PieceResult(0);
}
