using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence;
using WeldTrace.Persistence.ProcessLogStore;
using WeldTrace.ProcessLogs;

namespace WeldTrace.Web.Features.Qualifications.Weld;

public static class TestPieceLogEndpoint
{
    /// <summary>The log of a test piece as CSV, written again from its kept samples.</summary>
    public static void MapTestPieceLog(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            "/procedures/qualifications/pieces/{id:guid}/log.csv",
            async (
                Guid id,
                IDbContextFactory<WeldTraceDbContext> contexts,
                CancellationToken cancellation
            ) =>
            {
                await using var db = await contexts.CreateDbContextAsync(cancellation);
                var isPiece = await db.TestPieces.AnyAsync(p => p.Id == id, cancellation);
                var log = isPiece ? await db.FindProcessLogAsync(id, cancellation) : null;
                return log is null
                    ? Results.NotFound()
                    : Results.Stream(
                        destination =>
                            ProcessLogExport.WriteCsvAsync(log, destination, cancellation),
                        "text/csv",
                        "test-piece.csv"
                    );
            }
        );
}
