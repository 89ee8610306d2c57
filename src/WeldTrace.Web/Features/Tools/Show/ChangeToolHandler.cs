using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Features.Tools.Show;

/// <summary>What is done to a tool.</summary>
public enum ToolAct
{
    PutInService,
    Hold,
    Retire,
}

public sealed class ChangeToolForm
{
    public ToolAct Act { get; set; }

    public RetirementReason Why { get; set; }

    public string? Reason { get; set; }
}

public sealed class ChangeToolHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    TimeProvider clock
)
{
    public async Task<Outcome> HandleAsync(
        Guid id,
        ChangeToolForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var tool = await db.Tools.SingleOrDefaultAsync(t => t.Id == id, cancellation);
        if (tool is null)
        {
            return Outcome.Refused("tool", "There is no such tool.");
        }

        var at = clock.GetUtcNow();
        var outcome = form.Act switch
        {
            ToolAct.PutInService => tool.PutInService(actor, at),
            ToolAct.Hold => tool.Hold(form.Reason ?? "", actor, at),
            ToolAct.Retire => tool.Retire(form.Why, form.Reason ?? "", actor, at),
            _ => Outcome.Refused("act", "Choose what to do with the tool.", nameof(form.Act)),
        };
        return outcome.IsAccepted ? await db.SaveAsync(cancellation) : outcome;
    }
}
