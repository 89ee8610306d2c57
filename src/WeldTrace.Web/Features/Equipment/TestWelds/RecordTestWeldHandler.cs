using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Web.Acts;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Equipment.TestWelds;

public sealed class RecordTestWeldForm
{
    public Guid? ProcedureRevisionId { get; set; }

    public Guid? WelderId { get; set; }

    public Guid? ExaminerId { get; set; }

    public DateOnly? On { get; set; }

    public string? Verdict { get; set; }

    public string? Text { get; set; }

    public IFormFile? File { get; set; }
}

/// <summary>What the form offers.</summary>
public sealed record TestWeldChoices(
    IReadOnlyList<ProcedureRevision> Procedures,
    IReadOnlyList<Person> People
);

/// <summary>Enters the test welds by which a machine is opened again.</summary>
public sealed class RecordTestWeldHandler(
    ActDesk desk,
    IDbContextFactory<WeldTraceDbContext> contexts
)
{
    public const string Satisfactory = "satisfactory";
    public const string Unsatisfactory = "not satisfactory";

    public async Task<TestWeldChoices> ChoicesAsync(CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return new TestWeldChoices(
            await db
                .ProcedureRevisions.AsNoTracking()
                .Where(p => p.State == ProcedureState.Released)
                .OrderBy(p => p.Number)
                .ToListAsync(cancellation),
            await db
                .People.AsNoTracking()
                .Where(p => p.IsActive)
                .OrderBy(p => p.PrintedName)
                .ToListAsync(cancellation)
        );
    }

    public Task<Outcome> HandleAsync(
        Guid id,
        RecordTestWeldForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var entries = new Entries();
        var on = entries.Day(form.On, "the day of the weld", nameof(form.On));
        return desk.DoAsync(
            new PostedAct<Machine>(id, (moment, token) => DoAsync(moment, form, on, actor, token))
            {
                Unread = [.. entries.Refusals, .. Unjudged(form)],
                File = form.File,
            },
            actor,
            cancellation
        );
    }

    private static async Task<Outcome> DoAsync(
        ActMoment<Machine> moment,
        RecordTestWeldForm form,
        DateOnly on,
        Actor actor,
        CancellationToken cancellation
    )
    {
        var db = moment.Db;
        return moment.Record.RecordTestWeld(
            await db.ProcedureRevisions.SingleOrDefaultAsync(
                p => p.Id == form.ProcedureRevisionId,
                cancellation
            ),
            await db.People.SingleOrDefaultAsync(p => p.Id == form.WelderId, cancellation),
            await db.People.SingleOrDefaultAsync(p => p.Id == form.ExaminerId, cancellation),
            form.Verdict == Satisfactory,
            on,
            form.Text ?? "",
            moment.FileSha256,
            moment.Today,
            actor,
            moment.At
        );
    }

    private static IEnumerable<Refusal> Unjudged(RecordTestWeldForm form)
    {
        if (form.Verdict is not (Satisfactory or Unsatisfactory))
        {
            yield return new Refusal(
                "verdict",
                "Say whether the weld was satisfactory.",
                nameof(form.Verdict)
            );
        }
    }
}
