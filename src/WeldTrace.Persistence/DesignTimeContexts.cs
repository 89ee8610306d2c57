using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace WeldTrace.Persistence;

/// <summary>Used by <c>dotnet ef</c> only; no server is asked.</summary>
internal sealed class DesignTimeContexts : IDesignTimeDbContextFactory<WeldTraceDbContext>
{
    public WeldTraceDbContext CreateDbContext(string[] args) =>
        new(
            new DbContextOptionsBuilder<WeldTraceDbContext>().UseWeldTrace("Host=/nowhere").Options
        );
}
