using WeldTrace.Domain.Material;
using WeldTrace.Domain.Records;
using WeldTrace.Web.Acts;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Material.Lots;

/// <summary>Files the inspection document of a lot that is on record, or its results.</summary>
public sealed class FileLotHandler(ActDesk desk)
{
    public Task<Outcome> HandleAsync(
        Guid id,
        LotDocumentForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var entries = new Entries();
        var typed = LotDocumentActs.Read(form, entries);
        List<Refusal> unread = [.. entries.Refusals];
        if (!form.HasDocument)
        {
            unread.Add(new("type", "Choose the type of the document.", nameof(form.Type)));
        }

        return desk.DoAsync(
            new PostedAct<MaterialLot>(
                id,
                (moment, token) =>
                    LotDocumentActs.ApplyAsync(
                        moment.Db,
                        moment.Record,
                        form,
                        typed,
                        moment.FileSha256,
                        actor,
                        moment.At,
                        token
                    )
            )
            {
                Unread = unread,
                File = form.File,
            },
            actor,
            cancellation
        );
    }
}
