using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.Vessels;

namespace WeldTrace.Persistence.Loading;

/// <summary>Finds a record by what a person typed or a scanner read: its name, or the address of its page.</summary>
public static class ScannedCode
{
    private const int Longest = 400;

    /// <summary>Whether a code is the address of a page, as on a label, and no mark that somebody typed.</summary>
    public static bool IsAddress(string? code) =>
        Uri.TryCreate(code?.Trim(), UriKind.Absolute, out var address)
        && (address.Scheme == Uri.UriSchemeHttp || address.Scheme == Uri.UriSchemeHttps);

    /// <summary>The tool of a mark or of a scanned address; null when there is none.</summary>
    public static Task<Tool?> FindToolAsync(
        this WeldTraceDbContext db,
        string? code,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        return db.ToolsOf(code).SingleOrDefaultAsync(cancellation);
    }

    /// <summary>The machine of a name or of a scanned address; null when there is none.</summary>
    public static Task<Machine?> FindMachineAsync(
        this WeldTraceDbContext db,
        string? code,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        return db.MachinesOf(code).SingleOrDefaultAsync(cancellation);
    }

    /// <summary>The instrument of a mark or of a scanned address; null when there is none.</summary>
    public static Task<Instrument?> FindInstrumentAsync(
        this WeldTraceDbContext db,
        string? code,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        return db.InstrumentsOf(code).SingleOrDefaultAsync(cancellation);
    }

    /// <summary>The component of a serial or of a scanned address; null when there is none.</summary>
    public static Task<CutComponent?> FindComponentAsync(
        this WeldTraceDbContext db,
        string? code,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        return db.ComponentsOf(code).SingleOrDefaultAsync(cancellation);
    }

    /// <summary>The material lot of a number or of a scanned address; null when there is none.</summary>
    public static Task<MaterialLot?> FindLotAsync(
        this WeldTraceDbContext db,
        string? code,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        return db.LotsOf(code).SingleOrDefaultAsync(cancellation);
    }

    /// <summary>The same instruments, to be asked further.</summary>
    public static IQueryable<Instrument> InstrumentsOf(this WeldTraceDbContext db, string? code)
    {
        ArgumentNullException.ThrowIfNull(db);
        var (id, text) = Read(code);
        return db.Instruments.Where(i => i.Id == id || i.Mark == text);
    }

    /// <summary>The same components, to be asked further.</summary>
    public static IQueryable<CutComponent> ComponentsOf(this WeldTraceDbContext db, string? code)
    {
        ArgumentNullException.ThrowIfNull(db);
        var (id, text) = Read(code);
        return db.Components.Where(c => c.Id == id || c.Serial == text);
    }

    /// <summary>The same material lots, to be asked further.</summary>
    public static IQueryable<MaterialLot> LotsOf(this WeldTraceDbContext db, string? code)
    {
        ArgumentNullException.ThrowIfNull(db);
        var (id, text) = Read(code);
        return db.MaterialLots.Where(l => l.Id == id || l.Number == text);
    }

    /// <summary>The vessel of a serial or of a scanned address, which ends with the serial; null when there is none.</summary>
    public static Task<Vessel?> FindVesselAsync(
        this WeldTraceDbContext db,
        string? code,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        var (_, text) = Read(code);
        var serial = Uri.UnescapeDataString(text[(text.LastIndexOf('/') + 1)..]);
        return db
            .Vessels.Where(v => v.Serial == serial || v.Serial == text)
            .OrderByDescending(v => v.Serial == text)
            .FirstOrDefaultAsync(cancellation);
    }

    /// <summary>The same tools, to be asked further.</summary>
    public static IQueryable<Tool> ToolsOf(this WeldTraceDbContext db, string? code)
    {
        ArgumentNullException.ThrowIfNull(db);
        var (id, text) = Read(code);
        return db.Tools.Where(t => t.Id == id || t.Mark == text);
    }

    /// <summary>The same machines, to be asked further.</summary>
    public static IQueryable<Machine> MachinesOf(this WeldTraceDbContext db, string? code)
    {
        ArgumentNullException.ThrowIfNull(db);
        var (id, text) = Read(code);
        return db.Machines.Where(m => m.Id == id || m.Name == text);
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
