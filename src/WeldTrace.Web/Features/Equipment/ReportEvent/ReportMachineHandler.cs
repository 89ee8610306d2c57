using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Records;
using WeldTrace.Web.Acts;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Equipment.ReportEvent;

public sealed class ReportMachineForm
{
    public string? Kind { get; set; }

    public DateOnly? On { get; set; }

    public string? Text { get; set; }

    public IFormFile? File { get; set; }
}

/// <summary>Enters what happened to a machine.</summary>
public sealed class ReportMachineHandler(ActDesk desk)
{
    public Task<Outcome> HandleAsync(
        Guid id,
        ReportMachineForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var entries = new Entries();
        var kind = entries.Choice<MachineEventKind>(form.Kind, "What happened", nameof(form.Kind));
        var on = entries.Day(form.On, "the day", nameof(form.On));
        return desk.DoAsync(
            PostedAct.On<Machine>(
                id,
                m => m.Record.Report(kind, on, form.Text ?? "", m.FileSha256, m.Today, actor, m.At)
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
