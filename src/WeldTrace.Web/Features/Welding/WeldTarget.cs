using WeldTrace.Domain.Records;
using WeldTrace.Domain.Welding;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;

namespace WeldTrace.Web.Features.Welding;

/// <summary>What is to be welded on a vessel: a step of its route, or the repair that a finding's decision asks for.</summary>
/// <param name="Serial">Serial number of the vessel.</param>
/// <param name="Step">Step on the route; not looked at when a finding is named.</param>
/// <param name="Finding">Number of the finding; null for the step.</param>
public sealed record WeldTarget(string Serial, int Step, int? Finding = null)
{
    public string Address =>
        Finding is { } number ? Routes.WeldRepair(Serial, number) : Routes.WeldStep(Serial, Step);

    public Refusal Missing =>
        Finding is { } number
            ? new(
                "repair",
                FormattableString.Invariant(
                    $"No repair weld is decided on finding {number} of {Serial}; look at the finding."
                )
            )
            : new("step", $"{Serial} has no weld step {Step}.");

    /// <summary>What the rules look at; null when there is no such step or repair.</summary>
    public Task<WeldGateFacts?> FindFactsAsync(
        WeldTraceDbContext db,
        WeldChoice choice,
        CancellationToken cancellation
    ) =>
        Finding is { } number
            ? db.FindRepairGateFactsAsync(Serial, number, choice, cancellation)
            : db.FindWeldGateFactsAsync(Serial, Step, choice, cancellation);
}
