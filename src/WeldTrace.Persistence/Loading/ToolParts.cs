using System.Text.Json;
using Microsoft.EntityFrameworkCore;

namespace WeldTrace.Persistence.Loading;

public static class ToolParts
{
    /// <summary>Mark of another tool to which a part of this mark is or was fitted; null when there is none.</summary>
    /// <param name="db">Context.</param>
    /// <param name="mark">Mark of the part.</param>
    /// <param name="except">Tool that doesn't count.</param>
    /// <param name="cancellation">Ends the search.</param>
    public static async Task<string?> FindToolWithPartAsync(
        this WeldTraceDbContext db,
        string? mark,
        Guid? except,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        var part = JsonSerializer.Serialize(new[] { new { mark = mark?.Trim() ?? "" } });
        return await db
            .Tools.FromSql($"SELECT * FROM tools WHERE parts @> {part}::jsonb")
            .AsNoTracking()
            .Where(t => t.Id != except)
            .Select(t => t.Mark)
            .FirstOrDefaultAsync(cancellation);
    }
}
