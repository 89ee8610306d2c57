using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Web.Acts;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Findings.ShowFinding;

public sealed class StateCauseForm
{
    public string? Type { get; set; }

    public string? Text { get; set; }
}

public sealed class RecordBoardForm
{
    public string? Reference { get; set; }

    public string? Members { get; set; }

    public string? Text { get; set; }

    public string? Password { get; set; }
}

/// <summary>What is recorded on a finding beside the decision: cause and decision of the board.</summary>
public sealed class FindingActsHandler(ActDesk desk)
{
    public Task<Outcome> StateCauseAsync(
        Guid id,
        StateCauseForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var entries = new Entries();
        var type = entries.Choice<DefectType>(form.Type, "Kind of defect", nameof(form.Type));
        return desk.DoAsync(
            PostedAct.On<Finding>(
                id,
                moment => moment.Record.StateCause(type, form.Text ?? "", actor, moment.At)
            ) with
            {
                Unread = entries.Refusals,
            },
            actor,
            cancellation
        );
    }

    public Task<Outcome> RecordBoardAsync(
        Guid id,
        RecordBoardForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        return desk.DoAsync(
            PostedAct.On<Finding>(
                id,
                moment =>
                    moment.Record.RecordBoard(
                        form.Reference ?? "",
                        form.Members ?? "",
                        form.Text ?? "",
                        actor,
                        moment.At
                    )
            ) with
            {
                Meaning = Finding.BoardMeaning,
                Password = form.Password,
            },
            actor,
            cancellation
        );
    }
}
