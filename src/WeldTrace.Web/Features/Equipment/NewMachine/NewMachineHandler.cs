using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Equipment.NewMachine;

/// <summary>Enters a machine with what it can hold.</summary>
public sealed class NewMachineHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    SiteDay day,
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
        var entries = new Entries();
        var capability = form.Read(entries);
        if (entries.Refusals.Count > 0)
        {
            return entries.Refusals.ToList();
        }

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

        var described = Describe(
            machine.Value,
            form,
            capability,
            await day.TodayAsync(cancellation),
            actor
        );
        if (!described.IsAccepted)
        {
            return described.Refusals.ToList();
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

    private Outcome Describe(
        Machine machine,
        NewMachineForm form,
        MachineCapability capability,
        DateOnly today,
        Actor actor
    )
    {
        var at = clock.GetUtcNow();
        var described =
            capability.IsEmpty && form.Nameplate.IsEmpty
                ? Outcome.Accepted
                : machine.Describe(capability, actor, at, form.Nameplate);
        return described.IsAccepted && form.IsNewlyInstalled
            ? machine.Report(
                MachineEventKind.Installed,
                today,
                "Newly installed.",
                null,
                today,
                actor,
                at
            )
            : described;
    }
}
