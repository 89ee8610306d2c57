using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Features.Equipment.NewMachine;

/// <summary>Enters a machine.</summary>
public sealed class NewMachineHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    TimeProvider clock
)
{
    public async Task<Outcome<Machine>> HandleAsync(
        NewMachineForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var machine = Machine.Enter(
            form.Name ?? "",
            form.Description ?? "",
            form.ControlMode ?? "",
            actor,
            clock.GetUtcNow()
        );
        if (!machine.IsAccepted)
        {
            return machine;
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        db.Add(machine.Value);
        var saved = await db.SaveAsync(cancellation);
        return saved.IsAccepted
            ? machine
            : saved
                .Refusals.Select(r => r.Code == "exists" ? r with { Field = nameof(form.Name) } : r)
                .ToList();
    }
}
