using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Attachments;
using WeldTrace.Web.Files;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Acts;

/// <summary>What an act on a record has at hand.</summary>
/// <param name="Db">Context in which the record was loaded.</param>
/// <param name="Record">The record, tracked.</param>
/// <param name="FileSha256">Hash of the paper that was handed in; null when none was.</param>
/// <param name="Today">Day at the site.</param>
/// <param name="At">UTC instant.</param>
public sealed record ActMoment<T>(
    WeldTraceDbContext Db,
    T Record,
    string? FileSha256,
    DateOnly Today,
    DateTimeOffset At
)
    where T : Record;

/// <summary>An act on one record, as a form sent it.</summary>
/// <param name="Id">Record.</param>
/// <param name="Do">The act of the domain.</param>
public sealed record PostedAct<T>(Guid Id, Func<ActMoment<T>, CancellationToken, Task<Outcome>> Do)
    where T : Record
{
    /// <summary>What could not be read from the form.</summary>
    public IReadOnlyList<Refusal> Unread { get; init; } = [];

    /// <summary>A paper handed in with it.</summary>
    public IFormFile? File { get; init; }

    /// <summary>Meaning of the signature; null for an act that isn't signed.</summary>
    public string? Meaning { get; init; }

    /// <summary>Password of whoever signs.</summary>
    public string? Password { get; init; }
}

public static class PostedAct
{
    /// <summary>An act that looks at nothing but its record.</summary>
    public static PostedAct<T> On<T>(Guid id, Func<ActMoment<T>, Outcome> act)
        where T : Record => new(id, (moment, _) => Task.FromResult(act(moment)));
}

/// <summary>Does acts on records: takes in a paper, proves who signs, asks the domain, and saves all of it or nothing.</summary>
public sealed class ActDesk(
    IDbContextFactory<WeldTraceDbContext> contexts,
    PasswordCheck passwords,
    SiteDay day,
    TimeProvider clock
)
{
    /// <summary>Name of the field that a paper comes in.</summary>
    public const string FileField = "File";

    public async Task<Outcome> DoAsync<T>(
        PostedAct<T> act,
        Actor actor,
        CancellationToken cancellation
    )
        where T : Record
    {
        ArgumentNullException.ThrowIfNull(act);
        var refusals = act.Unread.ToList();
        var file = await PaperReader.ReadOptionalAsync(act.File, FileField, refusals, cancellation);
        if (refusals.Count > 0)
        {
            return Outcome.From(refusals);
        }

        var proved = act.Meaning is null
            ? Outcome.Accepted
            : await passwords.ForSignatureAsync(actor, act.Password, cancellation);
        return proved.IsAccepted ? await DoAsync(act, file, actor, cancellation) : proved;
    }

    private async Task<Outcome> DoAsync<T>(
        PostedAct<T> act,
        Attachment? file,
        Actor actor,
        CancellationToken cancellation
    )
        where T : Record
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var record = await db.Set<T>().SingleOrDefaultAsync(r => r.Id == act.Id, cancellation);
        if (record is null)
        {
            return Outcome.Refused("missing", "There is no such record; look for it in its list.");
        }

        var at = clock.GetUtcNow();
        var moment = new ActMoment<T>(
            db,
            record,
            file?.Sha256,
            await day.TodayAsync(cancellation),
            at
        );
        var outcome = await act.Do(moment, cancellation);
        if (!outcome.IsAccepted)
        {
            return outcome;
        }

        if (file is not null)
        {
            await db.KeepAsync(file, cancellation);
        }

        if (act.Meaning is { } meaning)
        {
            db.Add(Signature.Of(record, actor, meaning, at));
        }

        return await db.SaveAsync(cancellation);
    }
}
