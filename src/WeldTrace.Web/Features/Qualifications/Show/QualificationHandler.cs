using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Acts;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Qualifications.Show;

public sealed class SignQualificationForm
{
    public string? Password { get; set; }
}

public sealed class AbandonQualificationForm
{
    public string? Reason { get; set; }

    public string? Password { get; set; }
}

/// <summary>Signs a qualification when it is complete, or gives it up.</summary>
public sealed class QualificationHandler(ActDesk desk, SiteReader sites)
{
    public async Task<Outcome> SignAsync(
        Guid id,
        SignQualificationForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var site = await sites.GetAsync(cancellation);
        return await desk.DoAsync(
            new PostedAct<QualificationRecord>(
                id,
                (moment, token) => SignAsync(moment, site.Name, actor, token)
            )
            {
                Meaning = QualificationRecord.SignMeaning,
                Password = form.Password,
            },
            actor,
            cancellation
        );
    }

    public Task<Outcome> AbandonAsync(
        Guid id,
        AbandonQualificationForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        return desk.DoAsync(
            PostedAct.On<QualificationRecord>(
                id,
                moment => moment.Record.Abandon(form.Reason ?? "", actor, moment.At)
            ) with
            {
                Meaning = QualificationRecord.AbandonMeaning,
                Password = form.Password,
            },
            actor,
            cancellation
        );
    }

    private static async Task<Outcome> SignAsync(
        ActMoment<QualificationRecord> moment,
        string fabricator,
        Actor actor,
        CancellationToken cancellation
    )
    {
        var (db, record) = (moment.Db, moment.Record);
        var records = await db.FindQualificationAsync(record.Id, cancellation);
        return record.Sign(
            records!.Revision,
            records.Pieces,
            records.Tests,
            await db.TableOfAsync(record, LimitKind.QualificationRange, cancellation),
            await db.TableOfAsync(record, LimitKind.MaterialGroups, cancellation),
            fabricator,
            actor,
            moment.At
        );
    }
}
