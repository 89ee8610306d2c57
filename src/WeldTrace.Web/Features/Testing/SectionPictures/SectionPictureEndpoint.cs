using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Sectioning;
using WeldTrace.Persistence;
using WeldTrace.Web.Pictures;

namespace WeldTrace.Web.Features.Testing.SectionPictures;

/// <summary>Sends the picture of a section: whole and not too large, or tile by tile.</summary>
public static class SectionPictureEndpoint
{
    private const int LongestSide = 1600;

    public static void MapSectionPictures(this IEndpointRouteBuilder endpoints)
    {
        endpoints.MapGet("/tests/sections/{id:guid}/picture.jpg", SendWholeAsync);
        endpoints.MapGet(
            "/tests/sections/{id:guid}/tiles/{level:int}/{x:int}/{y:int}",
            SendTileAsync
        );
    }

    private static async Task<IResult> SendWholeAsync(
        Guid id,
        HttpContext http,
        IDbContextFactory<WeldTraceDbContext> contexts,
        PictureStore pictures
    ) =>
        await FindAsync(id, http, contexts) is { } photograph
            ? Send(http, await pictures.WholeAsync(photograph, LongestSide, http.RequestAborted))
            : Results.NotFound();

    private static async Task<IResult> SendTileAsync(
        Guid id,
        int level,
        int x,
        int y,
        HttpContext http,
        IDbContextFactory<WeldTraceDbContext> contexts,
        PictureStore pictures
    ) =>
        await FindAsync(id, http, contexts) is { } photograph
            ? Send(http, await pictures.TileAsync(photograph, level, x, y, http.RequestAborted))
            : Results.NotFound();

    private static async Task<Photograph?> FindAsync(
        Guid id,
        HttpContext http,
        IDbContextFactory<WeldTraceDbContext> contexts
    )
    {
        await using var db = await contexts.CreateDbContextAsync(http.RequestAborted);
        return await db
            .Sections.AsNoTracking()
            .Where(s => s.Id == id)
            .Select(s => s.Photograph)
            .SingleOrDefaultAsync(http.RequestAborted);
    }

    // The photograph of a section never changes, so that a browser may keep what it has.
    private static IResult Send(HttpContext http, byte[]? jpeg)
    {
        if (jpeg is null)
        {
            return Results.NotFound();
        }

        http.Response.Headers.CacheControl = "private, max-age=31536000, immutable";
        return Results.File(jpeg, "image/jpeg");
    }
}
