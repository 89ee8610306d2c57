using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Ledger;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Features.SiteSettings.Key;

/// <summary>
/// At the start: ends a change of key that a crash cut short, and puts the key of a site that was set up before keys were on record.
/// </summary>
public sealed partial class KeyOnRecordHandler(
    IServiceProvider services,
    TimeProvider clock,
    ILogger<KeyOnRecordHandler> logger
) : IHostedService
{
    public async Task StartAsync(CancellationToken cancellationToken)
    {
        // Neither the database nor the data folder is there before the services ahead of this one have started.
        var contexts = services.GetRequiredService<IDbContextFactory<WeldTraceDbContext>>();
        var folder = services.GetRequiredService<SiteKeyFolder>();
        await using var db = await contexts.CreateDbContextAsync(cancellationToken);
        var site = await db.Sites.AsNoTracking().SingleOrDefaultAsync(cancellationToken);
        if (site is null)
        {
            return;
        }

        var inUse = await db.SigningKeys.SingleOrDefaultAsync(
            k => k.Until == null,
            cancellationToken
        );
        if (inUse is null)
        {
            var program = new Actor(site.Id, "The program, at its start", []);
            db.Add(SigningKey.TakeIntoUse(folder.Current.PublicKey, program, clock.GetUtcNow()));
            await db.SaveChangesAsync(cancellationToken);
        }
        else if (!folder.Take(inUse.Fingerprint))
        {
            LogOtherKey(folder.Current.Fingerprint, inUse.Fingerprint);
        }
    }

    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    [LoggerMessage(
        LogLevel.Critical,
        "The site's key file holds key {Fingerprint}, but {OnRecord} is on record as the one in use. Put its file back from the backup; what is signed meanwhile will not verify."
    )]
    private partial void LogOtherKey(string fingerprint, string onRecord);
}
