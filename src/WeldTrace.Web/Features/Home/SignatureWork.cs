using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Concessions;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Marks;

namespace WeldTrace.Web.Features.Home;

/// <summary>What waits for a signature: tests with a verdict, and concessions that the other of the two has signed.</summary>
internal static class SignatureWork
{
    public static async Task<IReadOnlyList<WaitingWork>> ReadAsync(
        WeldTraceDbContext db,
        Actor actor,
        CancellationToken cancellation
    ) =>
        [
            .. await ConcessionsAsync(db, actor, cancellation),
            .. await TestsAsync(db, actor, cancellation),
        ];

    private static async Task<IEnumerable<WaitingWork>> ConcessionsAsync(
        WeldTraceDbContext db,
        Actor actor,
        CancellationToken cancellation
    )
    {
        if (!actor.HasAny(Concession.Signers))
        {
            return [];
        }

        var asked = await db
            .Concessions.AsNoTracking()
            .Where(c => c.State == ConcessionState.Asked)
            .OrderBy(c => c.Id)
            .ToListAsync(cancellation);
        return asked
            .Where(c => c.AskedBy.PersonId != actor.PersonId)
            .Select(c => new WaitingWork(
                Urgency.ToSign,
                Mark.InProgress,
                "to sign",
                $"Grant or decline: {c.RuleId} for step {c.StepSequence} of {c.VesselSerial}",
                Routes.Concession(c.Id)
            ));
    }

    private static async Task<IEnumerable<WaitingWork>> TestsAsync(
        WeldTraceDbContext db,
        Actor actor,
        CancellationToken cancellation
    )
    {
        if (!actor.HasAny(Role.Inspector))
        {
            return [];
        }

        return
        [
            .. (await Unsigned(db.LeakTests).ToListAsync(cancellation)).Select(t =>
                Sign(t, Routes.LeakTest(t.Id))
            ),
            .. (await Unsigned(db.PressureTests).ToListAsync(cancellation)).Select(t =>
                Sign(t, Routes.PressureTest(t.Id))
            ),
            .. (await Unsigned(db.Sections).ToListAsync(cancellation)).Select(t =>
                Sign(t, Routes.Section(t.Id))
            ),
        ];
    }

    private static IQueryable<T> Unsigned<T>(IQueryable<T> tests)
        where T : TestRecord =>
        tests
            .AsNoTracking()
            .Where(t => t.SignedAt == null && t.Withdrawal == null && t.Verdict != null)
            .OrderBy(t => t.TestedAt);

    private static WaitingWork Sign(TestRecord test, string address) =>
        new(Urgency.ToSign, Mark.Warning, "not signed", $"Sign {test.Label}", address);
}
