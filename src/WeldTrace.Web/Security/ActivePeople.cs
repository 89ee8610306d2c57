using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Security;

/// <summary>Whether a person may sign in.</summary>
public sealed class ActivePeople(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public async Task<bool> IsActiveAsync(Guid personId)
    {
        await using var db = await contexts.CreateDbContextAsync();
        return await db.People.AnyAsync(p => p.Id == personId && p.IsActive);
    }
}
