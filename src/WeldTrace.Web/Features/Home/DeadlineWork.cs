using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Marks;

namespace WeldTrace.Web.Features.Home;

/// <summary>What runs out: certificates, calibrations, and the service of machines.</summary>
internal static class DeadlineWork
{
    private const int CalibrationDays = 30;

    public static async Task<IReadOnlyList<WaitingWork>> ReadAsync(
        WeldTraceDbContext db,
        Actor actor,
        DateOnly today,
        CancellationToken cancellation
    ) =>
        [
            .. await CertificatesAsync(db, actor, today, cancellation),
            .. await CalibrationsAsync(db, actor, today, cancellation),
            .. await MachinesAsync(db, actor, today, cancellation),
        ];

    // One's own, and everybody's for those who keep them up.
    private static async Task<IEnumerable<WaitingWork>> CertificatesAsync(
        WeldTraceDbContext db,
        Actor actor,
        DateOnly today,
        CancellationToken cancellation
    )
    {
        var seesAll = actor.HasAny(Role.QualityManager, Role.Engineer);
        var certificates = await db
            .Certificates.AsNoTracking()
            .Where(c => seesAll || c.PersonId == actor.PersonId)
            .ToListAsync(cancellation);
        return certificates
            .Where(c => !c.IsRevoked)
            .OrderBy(c => c.EndsOn)
            .Select(c =>
                WaitingWork.Ending(
                    c.EndsOn < c.ExpiresOn
                        ? $"Confirm {c.Number} of {c.PersonName} by {c.EndsOn:yyyy-MM-dd}"
                        : $"Renew {c.Number} of {c.PersonName} by {c.EndsOn:yyyy-MM-dd}",
                    Routes.Certificate(c.Id),
                    c.EndsOn,
                    today
                )
            )
            .OfType<WaitingWork>();
    }

    private static async Task<IEnumerable<WaitingWork>> CalibrationsAsync(
        WeldTraceDbContext db,
        Actor actor,
        DateOnly today,
        CancellationToken cancellation
    )
    {
        if (!actor.HasAny(Role.Inspector, Role.QualityManager))
        {
            return [];
        }

        var instruments = await db
            .Instruments.AsNoTracking()
            .Where(i => i.WithdrawnBecause == null)
            .OrderBy(i => i.Mark)
            .ToListAsync(cancellation);
        return instruments
            .Where(i => !i.Text.IsIndicationOnly)
            .Where(i => i.DueOn is { } due && due <= today.AddDays(CalibrationDays))
            .OrderBy(i => i.DueOn)
            .Select(i =>
                WaitingWork.Ending(
                    $"Have {i.Mark} calibrated by {i.DueOn:yyyy-MM-dd}",
                    Routes.Instrument(i.Id),
                    i.DueOn!.Value,
                    today
                )
            )
            .OfType<WaitingWork>();
    }

    private static async Task<IEnumerable<WaitingWork>> MachinesAsync(
        WeldTraceDbContext db,
        Actor actor,
        DateOnly today,
        CancellationToken cancellation
    )
    {
        if (!actor.HasAny(Role.Operator, Role.Engineer, Role.QualityManager))
        {
            return [];
        }

        var machines = await db
            .Machines.AsNoTracking()
            .OrderBy(m => m.Name)
            .ToListAsync(cancellation);
        return machines
            .SelectMany(m => m.Maintenance.Select(due => (Machine: m, Due: due)))
            .Where(d =>
                d.Due.On(today)
                    is MaintenanceStanding.Soon
                        or MaintenanceStanding.Overdue
                        or MaintenanceStanding.Locking
            )
            .Select(d => Service(d.Machine, d.Due, today));
    }

    private static WaitingWork Service(Machine machine, MaintenanceDue due, DateOnly today)
    {
        var standing = due.On(today);
        return new WaitingWork(
            standing == MaintenanceStanding.Locking ? Urgency.Stopped
                : standing == MaintenanceStanding.Overdue ? Urgency.Week
                : Urgency.Month,
            standing == MaintenanceStanding.Locking ? Mark.Held : Mark.Warning,
            standing == MaintenanceStanding.Soon ? "service soon" : "service overdue",
            $"Service {machine.Name}: {due.Item.Name}, due {due.DueOn:yyyy-MM-dd}",
            Routes.MachineMaintenance(machine.Id)
        );
    }
}
