using System.Security.Claims;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Security;

/// <summary>The signed-in person with the roles held now, read from the records at every act.</summary>
public sealed class CurrentActor(
    AuthenticationStateProvider authentication,
    IDbContextFactory<WeldTraceDbContext> contexts
)
{
    /// <summary>The actor of this page or circuit.</summary>
    /// <exception cref="UnauthorizedAccessException">Nobody is signed in, or the person was set inactive.</exception>
    public async Task<Actor> GetAsync(CancellationToken cancellation = default)
    {
        var state = await authentication.GetAuthenticationStateAsync();
        return await GetAsync(contexts, state.User, cancellation);
    }

    /// <summary>The actor of a request outside the pages.</summary>
    /// <exception cref="UnauthorizedAccessException">Nobody is signed in, or the person was set inactive.</exception>
    public static async Task<Actor> GetAsync(
        IDbContextFactory<WeldTraceDbContext> contexts,
        ClaimsPrincipal user,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(contexts);
        ArgumentNullException.ThrowIfNull(user);
        if (!Guid.TryParse(user.FindFirstValue(AccountClaims.PersonId), out var personId))
        {
            throw new UnauthorizedAccessException("Nobody is signed in.");
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var person = await db
            .People.AsNoTracking()
            .SingleOrDefaultAsync(p => p.Id == personId && p.IsActive, cancellation);
        return person?.AsActor()
            ?? throw new UnauthorizedAccessException("The person is not active.");
    }
}
