using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Quantities;
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

public sealed class RecordRepairForm
{
    public string? Length { get; set; }

    public string? Note { get; set; }

    public string? Password { get; set; }
}

/// <summary>What is recorded on a finding before it is decided and after: cause, decision of the board, repair.</summary>
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

    public Task<Outcome> RecordRepairAsync(
        Guid id,
        RecordRepairForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var entries = new Entries();
        var length = entries.Number(form.Length, "mm", "Length repaired", nameof(form.Length));
        return desk.DoAsync(
            new PostedAct<Finding>(
                id,
                async (moment, token) =>
                    moment.Record.RecordRepair(
                        Length.FromMillimetres(length.InUnit()),
                        form.Note ?? "",
                        await moment.Db.Vessels.SingleAsync(
                            v => v.Id == moment.Record.VesselId,
                            token
                        ),
                        actor,
                        moment.At
                    )
            )
            {
                Unread = entries.Refusals,
                Meaning = Finding.RepairMeaning,
                Password = form.Password,
            },
            actor,
            cancellation
        );
    }
}
