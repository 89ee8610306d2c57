using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence.LedgerStore;

namespace WeldTrace.Web.Features.LedgerView.Checkpoints;

public sealed class CheckpointHandler(CheckpointDesk taker)
{
    /// <summary>Signs the ledger as it is now, for whoever wants to hold it against a later one.</summary>
    public async Task<Outcome> HandleAsync(Actor actor, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (
            RoleRules.Require(actor, Role.Auditor, Role.QualityManager, Role.Administrator) is
            { } refusal
        )
        {
            return Outcome.From([refusal]);
        }

        try
        {
            await taker.TakeAsync(cancellation);
            return Outcome.Accepted;
        }
        catch (BrokenLedgerException broken)
        {
            return Outcome.Refused("broken-ledger", broken.Message);
        }
    }
}
