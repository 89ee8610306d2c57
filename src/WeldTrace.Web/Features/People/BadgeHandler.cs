using Microsoft.EntityFrameworkCore;
using WeldTrace.Documents.Labels;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.People;

public sealed class WithdrawBadgeForm
{
    public string? Reason { get; set; }
}

/// <summary>Makes and withdraws the badges that name people at shared tablets.</summary>
public sealed class BadgeHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    StampReader stamps,
    TimeProvider clock
)
{
    /// <summary>Whether somebody has a badge.</summary>
    public async Task<bool> HasOneAsync(Guid id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db.Users.AnyAsync(
            a => a.PersonId == id && a.BadgeSha256 != null,
            cancellation
        );
    }

    /// <summary>A new badge to cut out, as a PDF; an earlier one is worth nothing from then on. Its word is kept nowhere, so it can't be printed again.</summary>
    public async Task<Outcome<byte[]>> MakeAsync(
        Guid id,
        Actor actor,
        CancellationToken cancellation
    )
    {
        var word = BadgeWord.New();
        var made = await ChangeAsync(
            id,
            (SignInMeans.BadgeMade, null),
            actor,
            TokenWord.HashOf(word),
            cancellation
        );
        if (!made.IsAccepted)
        {
            return made.Refusals.ToList();
        }

        var model = new LabelSheetModel
        {
            Stamp = await stamps.ReadAsync(actor, cancellation),
            Subject = "badges",
            Columns = 2,
            Labels = [new Label(made.Value!.PrintedName, ["badge for shared tablets"], word)],
        };
        using var pdf = new MemoryStream();
        LabelSheetExporter.Write(model, pdf);
        return pdf.ToArray();
    }

    /// <summary>Withdraws the badge, for instance because it was lost.</summary>
    public async Task<Outcome> WithdrawAsync(
        Guid id,
        WithdrawBadgeForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        return (
            await ChangeAsync(
                id,
                (SignInMeans.BadgeWithdrawn, form.Reason),
                actor,
                null,
                cancellation
            )
        ).WithoutValue();
    }

    private async Task<Outcome<Person>> ChangeAsync(
        Guid id,
        (SignInMeans Means, string? Reason) what,
        Actor actor,
        string? hash,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var person = await db.People.SingleOrDefaultAsync(p => p.Id == id, cancellation);
        var account = await db.Users.SingleOrDefaultAsync(a => a.PersonId == id, cancellation);
        if (person is null || account is null)
        {
            return new Refusal("person", "There is no such person.");
        }

        if (hash is null && account.BadgeSha256 is null)
        {
            return new Refusal("state", $"{person.PrintedName} has no badge.");
        }

        var stated = person.ChangeSignInMeans(what.Means, what.Reason, actor, clock.GetUtcNow());
        List<Refusal> refusals =
        [
            .. ManagePeople.Against(actor, person.Roles.Contains(Role.Administrator)),
            .. stated.Refusals,
        ];
        if (refusals.Count > 0)
        {
            return refusals.DistinctBy(r => r.Sentence).ToList();
        }

        account.BadgeSha256 = hash;
        var saved = await db.SaveAsync(cancellation);
        return saved.IsAccepted ? person : saved.Refusals.ToList();
    }
}
