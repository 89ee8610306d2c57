using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Records;
using WeldTrace.Web.Acts;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Equipment.PushLogs;

public sealed class LogTokenForm
{
    public string? Label { get; set; }

    public int Days { get; set; } = 365;
}

/// <summary>Gives a machine a token to push its logs with, and withdraws one.</summary>
public sealed class PushLogsHandler(ActDesk desk)
{
    /// <summary>The token, which is shown once and kept nowhere.</summary>
    public async Task<Outcome<string>> GiveAsync(
        Guid machineId,
        LogTokenForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var token = TokenWord.New();
        var outcome = await desk.DoAsync(
            PostedAct.On<Machine>(
                machineId,
                m =>
                    m.Record.GiveLogToken(
                        form.Label ?? "",
                        form.Days,
                        TokenWord.HashOf(token),
                        actor,
                        m.At
                    )
            ),
            actor,
            cancellation
        );
        return outcome.IsAccepted ? token : outcome.Refusals.ToList();
    }

    public Task<Outcome> WithdrawAsync(
        Guid machineId,
        LogTokenForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        return desk.DoAsync(
            PostedAct.On<Machine>(
                machineId,
                m => m.Record.WithdrawLogToken(form.Label ?? "", actor, m.At)
            ),
            actor,
            cancellation
        );
    }
}
