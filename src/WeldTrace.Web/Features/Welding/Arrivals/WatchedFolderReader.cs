using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Features.Welding.Arrivals;

/// <summary>
/// Takes in the files that machines write into <c>Logs:WatchedFolder</c>: each machine into a folder of its own name. A file
/// is taken once it has not changed from one look to the next, and is then moved into <c>taken</c> beside it.
/// </summary>
public sealed partial class WatchedFolderReader(
    IConfiguration configuration,
    ArrivedLogs arrivals,
    IServiceProvider services,
    ILogger<WatchedFolderReader> log
) : BackgroundService
{
    private const string Taken = "taken";
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(5);
    private Dictionary<string, (long Length, DateTime Written)> _seen = [];

    private string? Folder => configuration["Logs:WatchedFolder"];

    /// <summary>Looks once; what has not changed since the last look is taken in. Gives the number of files taken.</summary>
    public async Task<int> LookAsync(
        IDbContextFactory<WeldTraceDbContext> contexts,
        CancellationToken cancellation
    )
    {
        if (Folder is not { Length: > 0 } folder || !Directory.Exists(folder))
        {
            return 0;
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var machines = await db
            .Machines.AsNoTracking()
            .Select(m => new { m.Id, m.Name })
            .ToListAsync(cancellation);
        Dictionary<string, (long, DateTime)> seen = [];
        var taken = 0;
        foreach (var machine in machines)
        {
            var own = Path.Combine(folder, machine.Name);
            foreach (var file in FilesIn(own))
            {
                var now = (file.Length, file.LastWriteTimeUtc);
                if (_seen.TryGetValue(file.FullName, out var before) && before == now)
                {
                    await TakeAsync(machine.Id, file, cancellation);
                    taken++;
                }
                else
                {
                    seen[file.FullName] = now;
                }
            }
        }

        _seen = seen;
        return taken;
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Pause);
        while (Folder is { Length: > 0 } && await timer.WaitForNextTickAsync(stoppingToken))
        {
            try
            {
                // Asked for here and not in the constructor: the database is started by a hosted service too.
                await LookAsync(
                    services.GetRequiredService<IDbContextFactory<WeldTraceDbContext>>(),
                    stoppingToken
                );
            }
            catch (Exception failure) when (failure is not OperationCanceledException)
            {
                // A folder that is away for a while, a full disk, a database that starts again: the next look goes on.
                LookFailed(failure);
            }
        }
    }

    // A name that leads out of the folder is no folder of a machine.
    private IEnumerable<FileInfo> FilesIn(string own) =>
        Path.GetDirectoryName(Path.GetFullPath(own)) == Path.GetFullPath(Folder!).TrimEnd('/')
        && Directory.Exists(own)
            ? new DirectoryInfo(own).EnumerateFiles().Where(f => f.Length > 0)
            : [];

    private async Task TakeAsync(Guid machine, FileInfo file, CancellationToken cancellation)
    {
        await using (var content = file.OpenRead())
        {
            var hash = Convert.ToHexStringLower(await SHA256.HashDataAsync(content, cancellation));
            var arrival = await arrivals.BeginAsync(
                machine,
                file.Name,
                file.Length,
                hash,
                cancellation
            );
            content.Position = arrivals.OffsetOf(arrival);
            await arrivals.AppendAsync(arrival, content.Position, content, cancellation);
        }

        var aside = Directory.CreateDirectory(Path.Combine(file.DirectoryName!, Taken));
        file.MoveTo(Path.Combine(aside.FullName, file.Name), overwrite: true);
    }

    [LoggerMessage(LogLevel.Warning, "The watched folder of process logs could not be read.")]
    private partial void LookFailed(Exception failure);
}
