using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Concessions;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Marks;

namespace WeldTrace.Web.Features.Home;

/// <summary>What waits for a signature: tests with a verdict, complete qualifications, and concessions that the other of the two has signed.</summary>
internal static class SignatureWork
{
    public static async Task<IReadOnlyList<WaitingWork>> ReadAsync(
        WeldTraceDbContext db,
        Actor actor,
        CancellationToken cancellation
    ) =>
        [
            .. await ConcessionsAsync(db, actor, cancellation),
            .. await QualificationsAsync(db, actor, cancellation),
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

    // Complete: every planned piece is welded and every planned test has passed.
    private static async Task<IEnumerable<WaitingWork>> QualificationsAsync(
        WeldTraceDbContext db,
        Actor actor,
        CancellationToken cancellation
    )
    {
        if (!actor.HasAny(Role.Engineer, Role.QualityManager))
        {
            return [];
        }

        var open = await db
            .Qualifications.AsNoTracking()
            .Where(q => q.State == QualificationState.Open)
            .OrderBy(q => q.Number)
            .ToListAsync(cancellation);
        var ids = open.Select(q => q.Id).ToList();
        var pieces = await db
            .TestPieces.AsNoTracking()
            .Where(p => ids.Contains(p.QualificationId))
            .OrderBy(p => p.StartedAt)
            .ToListAsync(cancellation);
        var tests = await db
            .SpecimenTests.AsNoTracking()
            .Where(t => ids.Contains(t.QualificationId))
            .OrderBy(t => t.SignedAt)
            .ToListAsync(cancellation);
        return open.Where(q =>
                QualificationStanding
                    .Of(
                        q,
                        [.. pieces.Where(p => p.QualificationId == q.Id)],
                        [.. tests.Where(t => t.QualificationId == q.Id)]
                    )
                    .IsComplete
            )
            .Select(q => new WaitingWork(
                Urgency.ToSign,
                Mark.InProgress,
                "to sign",
                $"Sign qualification {q.Number} of {q.ProcedureLabel}",
                Routes.Qualification(q.Id)
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
