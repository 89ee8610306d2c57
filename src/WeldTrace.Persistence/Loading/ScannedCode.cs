using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Tooling;

namespace WeldTrace.Persistence.Loading;

/// <summary>Finds a record by what a person typed or a scanner read: its name, or the address of its page.</summary>
public static class ScannedCode
{
    private const int Longest = 400;

    /// <summary>The tool of a mark or of a scanned address; null when there is none.</summary>
    public static Task<Tool?> FindToolAsync(
        this WeldTraceDbContext db,
        string? code,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        var (id, text) = Read(code);
        return db.Tools.SingleOrDefaultAsync(t => t.Id == id || t.Mark == text, cancellation);
    }

    /// <summary>The machine of a name or of a scanned address; null when there is none.</summary>
    public static Task<Machine?> FindMachineAsync(
        this WeldTraceDbContext db,
        string? code,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        var (id, text) = Read(code);
        return db.Machines.SingleOrDefaultAsync(m => m.Id == id || m.Name == text, cancellation);
    }

    /// <summary>The instrument of a mark or of a scanned address; null when there is none.</summary>
    public static Task<Instrument?> FindInstrumentAsync(
        this WeldTraceDbContext db,
        string? code,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        var (id, text) = Read(code);
        return db.Instruments.SingleOrDefaultAsync(i => i.Id == id || i.Mark == text, cancellation);
    }

    /// <summary>The component of a serial or of a scanned address; null when there is none.</summary>
    public static Task<CutComponent?> FindComponentAsync(
        this WeldTraceDbContext db,
        string? code,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        var (id, text) = Read(code);
        return db.Components.SingleOrDefaultAsync(
            c => c.Id == id || c.Serial == text,
            cancellation
        );
    }

    private static (Guid Id, string Text) Read(string? code)
    {
        var text = code?.Trim() ?? "";
        if (text.Length > Longest || text.Contains('\0', StringComparison.Ordinal))
        {
            return (Guid.Empty, "");
        }

        return Guid.TryParseExact(text[(text.LastIndexOf('/') + 1)..], "D", out var id)
            ? (id, "")
            : (Guid.Empty, text);
    }
}
