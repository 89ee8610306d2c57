using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Records;
using WeldTrace.Web.Acts;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Equipment.Maintain;

public sealed class PlanMaintenanceForm
{
    public string? Name { get; set; }

    public string? Work { get; set; }

    public string? EveryDays { get; set; }

    public string? GraceDays { get; set; } = "7";

    public DateOnly? From { get; set; }
}

public sealed class DropMaintenanceForm
{
    public string? Item { get; set; }

    public string? Reason { get; set; }
}

public sealed class RecordServiceForm
{
    public string? Item { get; set; }

    public DateOnly? On { get; set; }

    public string? DoneBy { get; set; }

    public string? Text { get; set; }

    public IFormFile? File { get; set; }
}

/// <summary>Plans the maintenance of a machine and records each service.</summary>
public sealed class MaintainMachineHandler(ActDesk desk)
{
    public Task<Outcome> PlanAsync(
        Guid id,
        PlanMaintenanceForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var entries = new Entries();
        var item = new MaintenanceItem(
            form.Name ?? "",
            form.Work ?? "",
            entries.Whole(form.EveryDays, "days", "Days between services", nameof(form.EveryDays)),
            entries.Whole(form.GraceDays, "days", "Days of grace", nameof(form.GraceDays)),
            entries.Day(form.From, "the day from which it counts", nameof(form.From))
        );
        return desk.DoAsync(
            PostedAct.On<Machine>(id, m => m.Record.PlanMaintenance(item, actor, m.At)) with
            {
                Unread = entries.Refusals,
            },
            actor,
            cancellation
        );
    }

    public Task<Outcome> DropAsync(
        Guid id,
        DropMaintenanceForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        return desk.DoAsync(
            PostedAct.On<Machine>(
                id,
                m => m.Record.DropMaintenance(form.Item ?? "", form.Reason ?? "", actor, m.At)
            ),
            actor,
            cancellation
        );
    }

    public Task<Outcome> RecordAsync(
        Guid id,
        RecordServiceForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var entries = new Entries();
        var on = entries.Day(form.On, "the day of the service", nameof(form.On));
        return desk.DoAsync(
            PostedAct.On<Machine>(
                id,
                m =>
                    m.Record.RecordService(
                        form.Item ?? "",
                        on,
                        form.DoneBy ?? "",
                        form.Text ?? "",
                        m.FileSha256,
                        m.Today,
                        actor,
                        m.At
                    )
            ) with
            {
                Unread = entries.Refusals,
                File = form.File,
            },
            actor,
            cancellation
        );
    }
}
