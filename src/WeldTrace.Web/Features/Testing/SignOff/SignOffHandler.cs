using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Testing.SignOff;

/// <summary>A step that is signed off, and what was signed there before.</summary>
public sealed record SignOffFacts(
    TestFacts Facts,
    IReadOnlyCollection<Guid> WeldedBy,
    IReadOnlyList<StepSignOff> Earlier,
    IReadOnlyList<Signature> Signatures
);

public sealed class SignOffHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    PasswordCheck passwords,
    TimeProvider clock
)
{
    public async Task<SignOffFacts?> FindAsync(
        string serial,
        int sequence,
        Actor actor,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var examiner = await db.ExaminerAsync(actor, clock.GetUtcNow(), cancellation);
        if (await db.FindTestFactsAsync(serial, sequence, examiner, cancellation) is not { } facts)
        {
            return null;
        }

        var earlier = await db
            .StepSignOffs.AsNoTracking()
            .Where(s => s.VesselId == facts.Vessel.Id && s.StepSequence == sequence)
            .OrderBy(s => s.At)
            .ToListAsync(cancellation);
        var ids = earlier.Select(s => s.Id).ToList();
        return new SignOffFacts(
            facts,
            await db.WhoWeldedAsync(facts.Vessel.Id, cancellation),
            earlier,
            await db
                .Signatures.AsNoTracking()
                .Where(s => ids.Contains(s.SignedId))
                .ToListAsync(cancellation)
        );
    }

    public async Task<Outcome> HandleAsync(
        string serial,
        int sequence,
        SignOffForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var proved = await passwords.ForSignatureAsync(actor, form.Password, cancellation);
        if (!proved.IsAccepted)
        {
            return proved;
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        if (await db.StepSignOffs.AnyAsync(s => s.Id == form.Id, cancellation))
        {
            return Outcome.Accepted;
        }

        var examiner = await db.ExaminerAsync(actor, clock.GetUtcNow(), cancellation);
        if (await db.FindTestFactsAsync(serial, sequence, examiner, cancellation) is not { } facts)
        {
            return StepNotFound.Outcome(serial, sequence);
        }

        return await SignAsync(db, facts, form, actor, cancellation);
    }

    private async Task<Outcome> SignAsync(
        WeldTraceDbContext db,
        TestFacts facts,
        SignOffForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        var at = clock.GetUtcNow();
        form.Id = FormIdentity.OrNew(form.Id, clock);
        var weldedBy = await db.WhoWeldedAsync(facts.Vessel.Id, cancellation);
        var entries = new Entries();
        var examination =
            facts.Step.Kind == StepKind.Examination ? form.Examination.Read(entries) : null;
        if (entries.Refusals.Count > 0)
        {
            return Outcome.From(entries.Refusals);
        }

        var signed = StepSignOff.Confirm(
            form.Id,
            facts with
            {
                Typed = await db.TypedInstrumentsAsync(
                    cancellation,
                    [
                        .. (examination is null ? [] : form.Examination.Marks).Select(mark =>
                            (nameof(ExaminationReport.Instruments), (string?)mark)
                        ),
                    ]
                ),
            },
            weldedBy,
            form.Remark,
            examination,
            actor,
            at
        );
        if (!signed.IsAccepted)
        {
            return signed.WithoutValue();
        }

        var signOff = signed.Value.SignOff;
        db.AddRange(
            signOff,
            Signature.Of(signOff, actor, StepSignOff.MeaningOf(facts.Step.Kind), at)
        );
        if (signed.Value.Finding is { } finding)
        {
            db.Add(finding);
        }

        return await db.SaveAsync(cancellation);
    }
}
