using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Acts;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Tools.Parts;

public sealed class FitPartForm
{
    public string? Kind { get; set; }

    public string? Mark { get; set; }

    public string? Why { get; set; }

    public string? EndNote { get; set; }
}

/// <summary>Changes the pin or the shoulder of a tool whose parts are separate.</summary>
public sealed class FitPartHandler(ActDesk desk)
{
    public Task<Outcome> HandleAsync(
        Guid id,
        FitPartForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var entries = new Entries();
        var kind = entries.Choice<ToolPartKind>(form.Kind, "Part", nameof(form.Kind));
        var why = entries.Choice<RetirementReason>(form.Why, "Cause", nameof(form.Why));
        return desk.DoAsync(
            new PostedAct<Tool>(
                id,
                async (moment, token) =>
                    await moment.Db.FindToolWithPartAsync(form.Mark, id, token) is { } other
                        ? Outcome.Refused(
                            "mark",
                            $"Part {form.Mark?.Trim()} was fitted to {other}; a part keeps its mark for good, so check it.",
                            nameof(form.Mark)
                        )
                        : moment.Record.FitPart(
                            kind,
                            form.Mark ?? "",
                            why,
                            form.EndNote ?? "",
                            actor,
                            moment.At
                        )
            )
            {
                Unread = entries.Refusals,
            },
            actor,
            cancellation
        );
    }
}
