using System.Text.RegularExpressions;
using Microsoft.EntityFrameworkCore;
using Microsoft.Net.Http.Headers;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Archives;

namespace WeldTrace.Web.Features.Attachments;

/// <summary>Files kept under their hash, shown to whoever is signed in.</summary>
public static partial class Registration
{
    private static readonly string[] Shown = ["image/jpeg", "image/png"];

    public static void MapAttachments(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet("/attachments/{sha256}", SendAsync);

    private static async Task<IResult> SendAsync(
        string sha256,
        HttpContext http,
        IDbContextFactory<WeldTraceDbContext> contexts
    )
    {
        if (!Hash().IsMatch(sha256))
        {
            return Results.NotFound();
        }

        await using var db = await contexts.CreateDbContextAsync(http.RequestAborted);
        var attachment = await db.FindAttachmentAsync(sha256, http.RequestAborted);
        if (attachment is null)
        {
            return Results.NotFound();
        }

        // The bytes came from outside: whatever they are, they run nothing, and only photographs are shown in the page.
        http.Response.Headers.ContentSecurityPolicy =
            "default-src 'none'; base-uri 'none'; frame-ancestors 'none'; sandbox";
        http.Response.Headers.CacheControl = "private, max-age=31536000, immutable";
        var isShown = Shown.Contains(attachment.MediaType);
        return Results.File(
            attachment.Bytes,
            isShown ? attachment.MediaType : "application/octet-stream",
            isShown ? null
                : attachment.MediaType == "application/pdf" ? $"{sha256}.pdf"
                : sha256,
            entityTag: new EntityTagHeaderValue($"\"{sha256}\"")
        );
    }

    [GeneratedRegex("^[0-9a-f]{64}$")]
    private static partial Regex Hash();
}
