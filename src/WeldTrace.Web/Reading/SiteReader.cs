using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Sites;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Reading;

/// <summary>The site's settings: read once, forgotten when they change.</summary>
public sealed class SiteReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    private Site? _site;

    /// <summary>The site; null before it is set up.</summary>
    public async Task<Site?> FindAsync(CancellationToken cancellation = default)
    {
        if (_site is null)
        {
            await using var db = await contexts.CreateDbContextAsync(cancellation);
            _site = await db.Sites.AsNoTracking().SingleOrDefaultAsync(cancellation);
        }

        return _site;
    }

    /// <summary>The site, which is set up.</summary>
    public async Task<Site> GetAsync(CancellationToken cancellation = default) =>
        await FindAsync(cancellation)
        ?? throw new InvalidOperationException("The site is not set up.");

    public void Forget() => _site = null;
}
