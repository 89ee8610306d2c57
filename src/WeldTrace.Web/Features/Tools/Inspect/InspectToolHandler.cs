using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Acts;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Tools.Inspect;

public sealed class InspectToolForm
{
    public string? Kind { get; set; }

    public string? Verdict { get; set; }

    public string? PinLength { get; set; }

    public string? PinDiameter { get; set; }

    public string? InstrumentMark { get; set; }

    public string? Remark { get; set; }

    public IFormFile? File { get; set; }

    /// <summary>Whether anything was measured.</summary>
    public bool HasReading =>
        !string.IsNullOrWhiteSpace(PinLength) || !string.IsNullOrWhiteSpace(PinDiameter);
}

/// <summary>Records a first-use check, a cleaning or a wear inspection.</summary>
public sealed class InspectToolHandler(ActDesk desk)
{
    public const string Good = "good";
    public const string NotGood = "not good";

    public Task<Outcome> HandleAsync(
        Guid id,
        InspectToolForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var entries = new Entries();
        var kind = entries.Choice<ToolInspectionKind>(
            form.Kind,
            "Kind of inspection",
            nameof(form.Kind)
        );
        var reading = form.HasReading ? Read(entries, form) : null;
        return desk.DoAsync(
            new PostedAct<Tool>(
                id,
                async (moment, token) =>
                    moment.Record.Inspect(
                        new InspectionEntry(
                            kind,
                            form.Verdict == Good,
                            form.Remark ?? "",
                            reading is null
                                ? null
                                : reading with
                                {
                                    Instrument = await moment.Db.FindInstrumentAsync(
                                        reading.TypedMark,
                                        token
                                    ),
                                },
                            moment.FileSha256
                        ),
                        await DesignAsync(moment.Db, moment.Record.DesignId, token),
                        moment.Today,
                        actor,
                        moment.At
                    )
            )
            {
                Unread = [.. entries.Refusals, .. Unjudged(form)],
                File = form.File,
            },
            actor,
            cancellation
        );
    }

    private static PinReading Read(Entries entries, InspectToolForm form) =>
        new(
            entries.Number(form.PinLength, ToolUpkeep.Unit, "Pin length", nameof(form.PinLength)),
            entries.Number(
                form.PinDiameter,
                ToolUpkeep.Unit,
                "Pin diameter",
                nameof(form.PinDiameter)
            ),
            null,
            form.InstrumentMark ?? ""
        );

    private static IEnumerable<Refusal> Unjudged(InspectToolForm form)
    {
        if (form.Verdict is not (Good or NotGood))
        {
            yield return new Refusal(
                "verdict",
                "Say whether the tool is good.",
                nameof(form.Verdict)
            );
        }
    }

    private static Task<ToolDesign> DesignAsync(
        WeldTraceDbContext db,
        Guid designId,
        CancellationToken cancellation
    ) => db.ToolDesigns.SingleAsync(d => d.Id == designId, cancellation);
}
