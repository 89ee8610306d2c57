using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.WebUtilities;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Primitives;
using Microsoft.Net.Http.Headers;
using WeldTrace.Persistence;
using WeldTrace.Web.Files;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Welding.BringLog;

/// <summary>
/// Takes the file as it arrives, without a copy in memory. The form's first part is its anti-forgery token, the second
/// the file; what the request announces as too long is refused before a byte is read.
/// </summary>
public static class LogUploadEndpoint
{
    private const long RoomForForm = 64 * 1024;
    private const int LongestToken = 4096;

    public static void MapLogUpload(this IEndpointRouteBuilder endpoints) =>
        endpoints
            .MapPost("/runs/{id:guid}/log/file", TakeAsync)
            .RequireAuthorization(Policies.Working)
            .WithMetadata(new RequestSizeLimitAttribute(StagedLogs.MostBytes + RoomForForm));

    private static async Task<IResult> TakeAsync(
        Guid id,
        HttpContext http,
        LogUploadHandler handler,
        IAntiforgery antiforgery,
        IDbContextFactory<WeldTraceDbContext> contexts
    )
    {
        if (http.Request.ContentLength > StagedLogs.MostBytes + RoomForForm)
        {
            http.Response.Headers.Connection = "close";
            return Refused(id, StagedLogs.TooLarge.Code);
        }

        if (Boundary(http.Request) is not { } boundary)
        {
            return Results.BadRequest();
        }

        var parts = new MultipartReader(boundary, http.Request.Body);
        if (!await IsOursAsync(parts, http, antiforgery))
        {
            return Results.BadRequest();
        }

        var file = await parts.ReadNextSectionAsync(http.RequestAborted);
        if (file?.AsFileSection() is not { FileStream: { } content } section)
        {
            return Refused(id, LogUploadHandler.NoFile.Code);
        }

        var actor = await CurrentActor.GetAsync(contexts, http.User, http.RequestAborted);
        var kept = await handler.HandleAsync(
            id,
            section.FileName,
            content,
            null,
            actor,
            http.RequestAborted
        );
        return kept.IsAccepted
            ? Results.LocalRedirect(Routes.ReadLog(id, kept.Value.Id))
            : Refused(id, kept.Refusals[0].Code);
    }

    private static string? Boundary(HttpRequest request) =>
        MediaTypeHeaderValue.TryParse(request.ContentType, out var type)
        && type.MediaType.Equals("multipart/form-data", StringComparison.OrdinalIgnoreCase)
        && HeaderUtilities.RemoveQuotes(type.Boundary) is { Length: > 0 and <= 100 } boundary
            ? boundary.Value
            : null;

    private static async Task<bool> IsOursAsync(
        MultipartReader parts,
        HttpContext http,
        IAntiforgery antiforgery
    )
    {
        var first = await parts.ReadNextSectionAsync(http.RequestAborted);
        if (first?.AsFormDataSection() is not { } field)
        {
            return false;
        }

        using var reader = new StreamReader(field.Section.Body);
        var token = new char[LongestToken];
        var length = await reader.ReadBlockAsync(token, http.RequestAborted);
        var form = new Dictionary<string, StringValues>
        {
            [field.Name] = new string(token, 0, length),
        };
        http.Features.Set<IFormFeature>(new FormFeature(new FormCollection(form)));
        return await antiforgery.IsRequestValidAsync(http);
    }

    private static IResult Refused(Guid id, string code) =>
        Results.LocalRedirect(QueryHelpers.AddQueryString(Routes.BringLog(id), "refused", code));
}
