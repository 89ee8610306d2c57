using WeldTrace.ProcessLogs;
using WeldTrace.Web.Systems;

namespace WeldTrace.Web.Features.Testing.RecordLeakTest;

/// <summary>Readings that wait for the inspector.</summary>
/// <param name="Vessel">Serial number.</param>
/// <param name="Step">Step of the route.</param>
/// <param name="Samples">Samples in the file.</param>
/// <param name="Sentence">What happens with them.</param>
public sealed record PushedDecay(string Vessel, int Step, int Samples, string Sentence);

/// <summary>The bench sends the readings of a pressure decay; the inspector takes them when recording the leak test.</summary>
public static class PushDecayEndpoint
{
    public const string Pattern = "/api/vessels/{serial}/leak/{sequence:int}/readings";

    public static void MapPushDecay(this IEndpointRouteBuilder endpoints) =>
        PushedFile.TakeFile<PushedDecay>(
            endpoints
                .MapPost(Pattern, PushAsync)
                .WithSummary("Sends the readings of a pressure decay.")
                .WithDescription(
                    "The body is the logger's CSV with time, gauge pressure and vessel temperature. The readings wait for a day, until the inspector takes them into the leak test; newer ones take their place."
                ),
            PressureLog.MostBytes
        );

    private static Task<IResult> PushAsync(
        string serial,
        int sequence,
        string? name,
        HttpContext http,
        RecordLeakTestHandler handler
    ) =>
        PushedFile.TakeAsync(
            http,
            name,
            PressureLog.MostBytes,
            async pushed =>
            {
                var taken = await handler.PushAsync(
                    serial,
                    sequence,
                    pushed.Token.SystemName,
                    pushed.Log,
                    http.RequestAborted
                );
                return taken.IsAccepted ? Results.Ok(taken.Value) : ApiRefusal.Of(taken.Refusals);
            }
        );
}
