using System.Text.Json;
using System.Text.Json.Nodes;
using WeldTrace.Domain.Vessels;
using WeldTrace.Web.Security;
using WeldTrace.Web.Systems;

namespace WeldTrace.Web.Features.Systems.Histories;

/// <summary>The state of a vessel.</summary>
/// <param name="Serial">Serial number.</param>
/// <param name="Design">Number and revision of its design.</param>
/// <param name="ProductionLot">Its production lot.</param>
/// <param name="State">State in a word.</param>
/// <param name="NextStep">The step that comes next; null when the route is done.</param>
/// <param name="OpenFindings">Findings that are not closed.</param>
/// <param name="ShippedTo">Where it went; null while it is at the site.</param>
public sealed record VesselStanding(
    string Serial,
    string Design,
    string ProductionLot,
    string State,
    StepStanding? NextStep,
    IReadOnlyList<string> OpenFindings,
    string? ShippedTo
);

/// <summary>A step of a route.</summary>
/// <param name="Number">Its number on the route.</param>
/// <param name="Title">What is done.</param>
/// <param name="State">State in a word.</param>
public sealed record StepStanding(int Number, string Title, string State)
{
    internal static StepStanding? Of(RouteStep? step) =>
        step is null ? null : new(step.Sequence, step.Title, RouteStep.StateWord(step.State));
}

/// <summary>All records that speak of a vessel, with their ledger entries.</summary>
/// <param name="Format">Name and version of this form.</param>
/// <param name="Vessel">Serial number.</param>
/// <param name="Site">Name of the site.</param>
/// <param name="MadeAt">UTC instant.</param>
/// <param name="TreeSize">Entries of the whole ledger, to which the proofs lead.</param>
/// <param name="Root">Root of its tree, hexadecimal.</param>
/// <param name="Records">Newest version of each record, as in the history bundle.</param>
/// <param name="Entries">Every ledger entry of those records.</param>
public sealed record VesselHistoryAnswer(
    string Format,
    string Vessel,
    string Site,
    DateTimeOffset MadeAt,
    long TreeSize,
    string Root,
    IReadOnlyList<JsonNode> Records,
    IReadOnlyList<ProvedEntryAnswer> Entries
);

/// <summary>A ledger entry with its proof.</summary>
/// <param name="Entry">The entry; its leaf is the hash of its canonical form (RFC 8785, RFC 9162).</param>
/// <param name="Path">Sibling hashes from the leaf up, hexadecimal.</param>
public sealed record ProvedEntryAnswer(JsonNode Entry, IReadOnlyList<string> Path);

public static class HistoryEndpoints
{
    public const string State = "/api/vessels/{serial}";
    public const string History = State + "/history";

    // What a record says is in its own form already.
    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web);

    public static void MapHistories(this IEndpointRouteBuilder endpoints)
    {
        Add<VesselStanding>(
            endpoints.MapGet(
                State,
                async (string serial, HistoryReader reader, CancellationToken cancellation) =>
                    Answer(serial, await reader.StandingAsync(serial, cancellation))
            ),
            "Answers the state of a vessel."
        );
        Add<VesselHistoryAnswer>(
            endpoints.MapGet(
                History,
                async (string serial, HistoryReader reader, CancellationToken cancellation) =>
                    Answer(serial, await reader.HistoryAsync(serial, cancellation))
            ),
            "Answers all records that speak of a vessel, with their ledger entries and proofs."
        );
    }

    private static void Add<T>(RouteHandlerBuilder endpoint, string summary) =>
        endpoint
            .RequireAuthorization(Policies.ReadingHistories)
            .RequireRateLimiting(ApiLimit.Policy)
            .WithSummary(summary)
            .Produces<T>()
            .ProducesProblem(StatusCodes.Status401Unauthorized)
            .ProducesProblem(StatusCodes.Status403Forbidden)
            .ProducesProblem(StatusCodes.Status404NotFound)
            .ProducesProblem(StatusCodes.Status429TooManyRequests);

    private static IResult Answer<T>(string serial, T? found)
        where T : class =>
        found is null
            ? Results.Problem(
                $"There is no vessel {serial}. Check the serial number.",
                statusCode: StatusCodes.Status404NotFound
            )
            : Results.Json(found, Options);
}
