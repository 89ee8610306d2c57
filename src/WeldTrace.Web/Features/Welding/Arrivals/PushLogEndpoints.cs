using Microsoft.AspNetCore.Mvc;
using WeldTrace.Web.Files;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Welding.Arrivals;

/// <summary>
/// A machine pushes its log in pieces. It announces name, length and SHA-256, and is told where the pieces go and from which
/// byte on; each piece names the byte it starts at. After a break it asks, and goes on from the byte that it is told.
/// </summary>
public static class PushLogEndpoints
{
    public const string Begin = "/equipment/machines/{id:guid}/logs";
    public const string One = "/equipment/machines/{id:guid}/logs/{arrival:guid}";
    public const string Pieces = One + "/pieces";
    private const long LongestPiece = 64L * 1024 * 1024;
    private const int NoSpaceLeft = 28;

    public static void MapPushLogs(this IEndpointRouteBuilder endpoints)
    {
        endpoints.MapPost(Begin, BeginAsync).RequireAuthorization(Policies.PushingLogs);
        endpoints.MapGet(One, Ask).RequireAuthorization(Policies.PushingLogs);
        endpoints
            .MapPut(Pieces, AppendAsync)
            .RequireAuthorization(Policies.PushingLogs)
            .WithMetadata(new RequestSizeLimitAttribute(LongestPiece));
    }

    private static async Task<IResult> BeginAsync(
        Guid id,
        string name,
        long length,
        string sha256,
        ArrivedLogs arrivals,
        CancellationToken cancellation
    )
    {
        if (length is <= 0 or > StagedLogs.MostBytes)
        {
            return Refused(400, "The length must be 1 byte to 2 GB.");
        }

        if (sha256.Length != 64 || !sha256.All(char.IsAsciiHexDigit))
        {
            return Refused(400, "The SHA-256 must be 64 hexadecimal digits.");
        }

        var hash = sha256.ToLowerInvariant();
        var arrival = await arrivals.BeginAsync(id, name, length, hash, cancellation);
        return Results.Created(
            $"/equipment/machines/{id:D}/logs/{arrival.Id:D}",
            Standing(arrival, arrivals.OffsetOf(arrival))
        );
    }

    private static IResult Ask(Guid id, Guid arrival, ArrivedLogs arrivals) =>
        arrivals.Find(id, arrival) is { } found
            ? Results.Ok(Standing(found, arrivals.OffsetOf(found)))
            : NotHere();

    private static async Task<IResult> AppendAsync(
        Guid id,
        Guid arrival,
        long from,
        HttpRequest request,
        ArrivedLogs arrivals,
        CancellationToken cancellation
    )
    {
        if (arrivals.Find(id, arrival) is not { } found)
        {
            return NotHere();
        }

        try
        {
            return await arrivals.AppendAsync(found, from, request.Body, cancellation) switch
            {
                PieceResult.Kept kept => Results.Ok(Standing(found, kept.Offset)),
                PieceResult.Damaged => Refused(
                    422,
                    "The bytes don't give the announced SHA-256 and were thrown away; push the log again from its start."
                ),
                var misplaced => Results.Json(
                    Standing(found, misplaced.Offset),
                    statusCode: StatusCodes.Status409Conflict
                ),
            };
        }
        catch (IOException full) when (full.HResult == NoSpaceLeft)
        {
            return Refused(
                507,
                "The disk of the server is full; make room, then push this piece again."
            );
        }
    }

    private static object Standing(ArrivedLog arrival, long offset) =>
        new
        {
            id = arrival.Id,
            offset,
            length = arrival.Length,
            isWhole = offset == arrival.Length,
        };

    private static IResult NotHere() =>
        Refused(404, "There is no such log under way; announce it again.");

    private static IResult Refused(int status, string sentence) =>
        Results.Problem(sentence, statusCode: status);
}
