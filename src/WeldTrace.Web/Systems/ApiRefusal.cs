using WeldTrace.Domain.Records;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Systems;

/// <summary>Refusals as problem details (RFC 9457) that a person reads in the log of the other system.</summary>
internal static class ApiRefusal
{
    // The record is not in a state for it; the same request may be right later.
    private static readonly string[] States =
    [
        "stage",
        "state",
        "step",
        "departure",
        "unsigned",
        "F1",
        Saving.LostRace,
    ];

    public static IResult Of(IReadOnlyList<Refusal> refusals) =>
        Results.Problem(
            string.Join(' ', refusals.Select(r => r.Sentence)),
            statusCode: StatusOf(refusals)
        );

    private static int StatusOf(IReadOnlyList<Refusal> refusals) =>
        refusals.Any(r => r.Code == "missing" && r.Field is null) ? StatusCodes.Status404NotFound
        : refusals.Any(r => States.Contains(r.Code)) ? StatusCodes.Status409Conflict
        : StatusCodes.Status422UnprocessableEntity;
}
