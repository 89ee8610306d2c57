using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Web.Acts;

namespace WeldTrace.Web.Features.Procedures.Show;

public sealed class WithdrawProcedureForm
{
    public string? Reason { get; set; }

    public string? Password { get; set; }
}

/// <summary>Takes a procedure revision out of use for good, with a signature.</summary>
public sealed class WithdrawProcedureHandler(ActDesk desk)
{
    public Task<Outcome> HandleAsync(
        Guid id,
        WithdrawProcedureForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        return desk.DoAsync(
            PostedAct.On<ProcedureRevision>(
                id,
                m => m.Record.Withdraw(form.Reason ?? "", actor, m.At)
            ) with
            {
                Meaning = ProcedureRevision.WithdrawMeaning,
                Password = form.Password,
            },
            actor,
            cancellation
        );
    }
}
