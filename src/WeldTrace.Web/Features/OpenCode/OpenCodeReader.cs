using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;

namespace WeldTrace.Web.Features.OpenCode;

/// <summary>Finds the page of whatever a scanned or typed code means.</summary>
public sealed class OpenCodeReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    /// <summary>Address of the page; null when no record has the code.</summary>
    public async Task<string?> FindAsync(string? code, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db.FindToolAsync(code, cancellation) is { } tool ? Routes.Tool(tool.Id)
            : await db.FindComponentAsync(code, cancellation) is { } component
                ? Routes.Component(component.Id)
            : await db.FindInstrumentAsync(code, cancellation) is { } instrument
                ? Routes.Instrument(instrument.Id)
            : await db.FindMachineAsync(code, cancellation) is { } machine
                ? Routes.Machine(machine.Id)
            : await db.FindLotAsync(code, cancellation) is { } lot ? Routes.MaterialLot(lot.Id)
            : await db.FindVesselAsync(code, cancellation) is { } vessel
                ? Routes.Vessel(vessel.Serial)
            : null;
    }
}
