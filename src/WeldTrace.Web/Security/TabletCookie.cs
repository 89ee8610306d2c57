using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Access;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Security;

/// <summary>Which shared tablet a request comes from: its browser keeps a long-lived word, of which only the hash is known here.</summary>
public sealed class TabletCookie(
    IDbContextFactory<WeldTraceDbContext> contexts,
    IHttpContextAccessor accessor
)
{
    // As long as browsers keep any cookie (RFC 6265bis 5.5); it is renewed at each change of person.
    private static readonly TimeSpan CookieLife = TimeSpan.FromDays(400);

    private readonly HostCookie _cookie = new("weld-tablet", accessor);

    /// <summary>Whether the browser says that it is a shared tablet; it may not be one any more.</summary>
    public bool SaysSo => Word is not null;

    /// <summary>Where people sign in on the device of this request.</summary>
    public string Door => SaysSo ? Routes.ChangePerson : Routes.SignIn;

    private string? Word => accessor.HttpContext?.Request.Cookies[_cookie.Name!];

    /// <summary>The tablet of this request; null when it is none, or was withdrawn.</summary>
    public async Task<SharedTablet?> FindAsync(CancellationToken cancellation)
    {
        if (Word is not { } word)
        {
            return null;
        }

        var hash = TokenWord.HashOf(word);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db
            .SharedTablets.AsNoTracking()
            .SingleOrDefaultAsync(
                t => t.TokenSha256 == hash && t.WithdrawnAt == null,
                cancellation
            );
    }

    /// <summary>Has the browser keep the word.</summary>
    public void Keep(string word)
    {
        var http = accessor.HttpContext!;
        var options = _cookie.Build(http);
        options.MaxAge = CookieLife;
        http.Response.Cookies.Append(_cookie.Name!, word, options);
    }

    /// <summary>Has the browser forget a word that is worth nothing any more.</summary>
    public void Forget()
    {
        var http = accessor.HttpContext!;
        http.Response.Cookies.Delete(_cookie.Name!, _cookie.Build(http));
    }

    /// <summary>Has the browser keep its word for longer.</summary>
    public void KeepOn()
    {
        if (Word is { } word)
        {
            Keep(word);
        }
    }
}
