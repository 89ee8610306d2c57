using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Concessions;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Welding;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Concessions.Ask;

/// <summary>What the page shows before a concession is asked for.</summary>
/// <param name="Facts">What the rules look at.</param>
/// <param name="Verdict">The rule; null when there is none of that name.</param>
/// <param name="Welders">Operators, for a rule about the person; else empty.</param>
public sealed record AskConcessionView(
    WeldGateFacts Facts,
    RuleVerdict? Verdict,
    IReadOnlyList<Person> Welders
);

/// <summary>Asks for a rule before a weld to be waived, signed by the first of the two.</summary>
public sealed class AskConcessionHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    PasswordCheck passwords,
    TimeProvider clock
)
{
    /// <summary>The rule that is about the person who welds.</summary>
    public const string PersonsRule = "F4";

    public async Task<AskConcessionView?> FindAsync(
        string serial,
        int sequence,
        string ruleId,
        AskConcessionForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var welders =
            ruleId == PersonsRule ? await WeldersAsync(db, cancellation) : (List<Person>)[];
        var welder = Welder(welders, form) ?? actor;
        var facts = await FactsAsync(db, serial, sequence, form, welder, cancellation);
        return facts is null
            ? null
            : new(facts, WeldGate.Judge(facts).FirstOrDefault(v => v.RuleId == ruleId), welders);
    }

    public async Task<Outcome<Concession>> HandleAsync(
        string serial,
        int sequence,
        string ruleId,
        AskConcessionForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var proved = await passwords.ForSignatureAsync(actor, form.Password, cancellation);
        if (!proved.IsAccepted)
        {
            return proved.Refusals.ToList();
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var welder =
            ruleId == PersonsRule ? Welder(await WeldersAsync(db, cancellation), form) : actor;
        if (welder is null)
        {
            return new Refusal("welder", "Choose who would weld.", nameof(form.Welder));
        }

        if (await FactsAsync(db, serial, sequence, form, welder, cancellation) is not { } facts)
        {
            return new Refusal("step", $"{serial} has no weld step {sequence}.");
        }

        var concession = Concession.Ask(facts, ruleId, form.Reason ?? "", actor, facts.Now);
        return concession.IsAccepted
            ? await SaveAsync(db, concession.Value, actor, cancellation)
            : concession;
    }

    private static async Task<Outcome<Concession>> SaveAsync(
        WeldTraceDbContext db,
        Concession concession,
        Actor actor,
        CancellationToken cancellation
    )
    {
        db.AddRange(
            concession,
            Signature.Of(concession, actor, Concession.AskMeaning, concession.AskedBy.At)
        );
        var saved = await db.SaveAsync(cancellation);
        return saved.IsAccepted ? concession : saved.Refusals.ToList();
    }

    private Task<WeldGateFacts?> FactsAsync(
        WeldTraceDbContext db,
        string serial,
        int sequence,
        AskConcessionForm form,
        Actor welder,
        CancellationToken cancellation
    ) =>
        db.FindWeldGateFactsAsync(
            serial,
            sequence,
            new WeldChoice(form.Tool, form.Machine, welder, clock.GetUtcNow()),
            cancellation
        );

    private static async Task<List<Person>> WeldersAsync(
        WeldTraceDbContext db,
        CancellationToken cancellation
    )
    {
        var people = await db
            .People.AsNoTracking()
            .Where(p => p.IsActive)
            .OrderBy(p => p.PrintedName)
            .ToListAsync(cancellation);
        return [.. people.Where(p => p.Roles.Contains(Role.Operator))];
    }

    private static Actor? Welder(IEnumerable<Person> welders, AskConcessionForm form) =>
        welders.FirstOrDefault(w => w.Id == form.Welder)?.AsActor();
}
