using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Records;
using WeldTrace.Web.Acts;

namespace WeldTrace.Web.Features.Equipment.ShowMachine;

public sealed class ReleaseMachineForm
{
    /// <summary>The meaning that was shown to the signer: of a clearing or of an opening.</summary>
    public string? Meaning { get; set; }

    public string? Text { get; set; }

    public string? Password { get; set; }
}

/// <summary>Clears a machine that somebody doubted, or opens it after its test welds; each is signed.</summary>
public sealed class ReleaseMachineHandler(ActDesk desk)
{
    public async Task<Outcome> HandleAsync(
        Guid id,
        ReleaseMachineForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        Func<ActMoment<Machine>, Outcome>? act = form.Meaning switch
        {
            Machine.ClearMeaning => m => m.Record.Clear(form.Text ?? "", m.Today, actor, m.At),
            Machine.ReopenMeaning => m => m.Record.Reopen(form.Text ?? "", m.Today, actor, m.At),
            _ => null,
        };
        return act is null
            ? Outcome.Refused("meaning", "Open the machine's page again, then sign.")
            : await desk.DoAsync(
                PostedAct.On<Machine>(id, act) with
                {
                    Meaning = form.Meaning,
                    Password = form.Password,
                },
                actor,
                cancellation
            );
    }
}
