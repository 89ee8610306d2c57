using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence;
using WeldTrace.Persistence.ProcessLogStore;
using WeldTrace.ProcessLogs;

namespace WeldTrace.Web.Features.Welding.ShowRun;

/// <summary>The log of a run as CSV, written again from its kept samples.</summary>
public static class RunLogEndpoint
{
    public static void MapRunLogCsv(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet("/runs/{id:guid}/log.csv", SendAsync);

    private static async Task<IResult> SendAsync(
        Guid id,
        IDbContextFactory<WeldTraceDbContext> contexts,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var run = await db
            .WeldRuns.AsNoTracking()
            .SingleOrDefaultAsync(r => r.Id == id, cancellation);
        var log = await db.FindProcessLogAsync(id, cancellation);
        return run is null || log is null
            ? Results.NotFound()
            : Results.Stream(
                destination => ProcessLogExport.WriteCsvAsync(log, destination, cancellation),
                $"text/csv; charset={Charset(log.Header.Dialect.Encoding)}",
                NameOf($"{run.VesselSerial}-{run.JointCode}-pass-{run.PassNumber}") + ".csv"
            );
    }

    private static string Charset(LogEncoding encoding) =>
        encoding switch
        {
            LogEncoding.Utf16LittleEndian => "utf-16le",
            LogEncoding.Utf16BigEndian => "utf-16be",
            LogEncoding.Latin1 => "iso-8859-1",
            _ => "utf-8",
        };

    private static string NameOf(string text) =>
        string.Concat(text.Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-'));
}
