using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Records;
using WeldTrace.Web.Acts;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Equipment.Describe;

/// <summary>States what a machine is and what it can hold.</summary>
public sealed class DescribeMachineHandler(ActDesk desk)
{
    public Task<Outcome> HandleAsync(
        Guid id,
        CapabilityForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var entries = new Entries();
        var capability = form.Read(entries);
        return desk.DoAsync(
            PostedAct.On<Machine>(
                id,
                m => m.Record.Describe(capability, actor, m.At, form.Nameplate)
            ) with
            {
                Unread = entries.Refusals,
            },
            actor,
            cancellation
        );
    }
}
