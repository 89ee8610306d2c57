using WeldTrace.ProcessLogs;
using WeldTrace.Web.Systems;

namespace WeldTrace.Web.Features.Testing.PressureTesting;

/// <summary>A stage that a system recorded.</summary>
/// <param name="Vessel">Serial number.</param>
/// <param name="Step">Step of the route.</param>
/// <param name="Stage">Number of the stage, from 1.</param>
/// <param name="Verdict">Its verdict; null while the test stands for a decision.</param>
/// <param name="Sentence">The verdict in a sentence, or why the test stands.</param>
public sealed record PushedStage(
    string Vessel,
    int Step,
    int Stage,
    string? Verdict,
    string Sentence
);

/// <summary>The bench sends a hold of the pressure test that is under way, by the same gates as an inspector.</summary>
public static class PushStageEndpoint
{
    public const string Pattern =
        "/api/vessels/{serial}/pressure/{sequence:int}/stages/{stage:int}";

    public static void MapPushStage(this IEndpointRouteBuilder endpoints) =>
        PushedFile.TakeFile<PushedStage>(
            endpoints
                .MapPost(Pattern, PushAsync)
                .WithSummary("Records a hold of the pressure test that is under way.")
                .WithDescription(
                    "The body is the logger's CSV with time, gauge pressure and vessel temperature. Sent twice it is recorded once. The return to zero and a burst are entered by hand."
                ),
            PressureLog.MostBytes
        );

    private static Task<IResult> PushAsync(
        string serial,
        int sequence,
        int stage,
        string? name,
        HttpContext http,
        PressureTestingHandler handler
    ) =>
        PushedFile.TakeAsync(
            http,
            name,
            PressureLog.MostBytes,
            async pushed =>
            {
                var form = new PressureStageForm { StageNumber = stage, Log = pushed.Log };
                var outcome = await handler.RecordStageAsync(
                    serial,
                    sequence,
                    form,
                    pushed.Token.AsActor(),
                    http.RequestAborted
                );
                return outcome.IsAccepted
                    ? Results.Ok(
                        await handler.PushedAsync(serial, sequence, stage, http.RequestAborted)
                    )
                    : ApiRefusal.Of(outcome.Refusals);
            }
        );
}
