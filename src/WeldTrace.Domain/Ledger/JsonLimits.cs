namespace WeldTrace.Domain.Ledger;

/// <summary>How much JSON text is read before it is refused.</summary>
/// <param name="MaximumBytes">Longest text in bytes.</param>
/// <param name="MaximumDepth">Deepest nesting of arrays and objects, at most 256.</param>
public sealed record JsonLimits(int MaximumBytes, int MaximumDepth)
{
    /// <summary>Limits for one record or one ledger entry: 16 MiB and 64 levels.</summary>
    public static JsonLimits ForRecords { get; } = new(16 * 1024 * 1024, 64);
}
