using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Equipment;

public sealed partial class Machine
{
    private const int LongestInterval = 3660;
    private const int LongestGrace = 365;

    /// <summary>Puts an item into the maintenance plan, or changes the item of the same name.</summary>
    public Outcome PlanMaintenance(MaintenanceItem item, Actor actor, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(item);
        var checks = new Checks()
            .Role(actor, Role.Engineer, Role.QualityManager)
            .Text(item.Name, LongestText, "Name what is serviced", nameof(item.Name))
            .Text(
                item.Work,
                LongestAccount,
                "Say what is done, or name the instruction",
                nameof(item.Work)
            )
            .That(
                item.EveryDays is >= 1 and <= LongestInterval,
                "interval",
                $"Give the days between services, 1 to {LongestInterval}.",
                nameof(item.EveryDays)
            )
            .That(
                item.GraceDays is >= 0 and <= LongestGrace,
                "grace",
                $"Give the days of grace after the due day, 0 to {LongestGrace}.",
                nameof(item.GraceDays)
            );
        var kept = item with { Name = item.Name.Trim(), Work = item.Work.Trim() };
        return Do(
            checks,
            () => Plan = [.. (Plan ?? []).Where(i => i.Name != kept.Name), kept],
            actor,
            at,
            "maintenance planned",
            $"{kept.Name}: every {kept.EveryDays} days, {kept.GraceDays} days of grace"
        );
    }

    /// <summary>Takes an item out of the plan; its services stay on record.</summary>
    public Outcome DropMaintenance(string name, string reason, Actor actor, DateTimeOffset at)
    {
        var checks = new Checks()
            .Role(actor, Role.Engineer, Role.QualityManager)
            .That(
                Plan?.Any(i => i.Name == name) is true,
                "item",
                $"The plan has no item '{name}'.",
                nameof(MaintenanceService.Item)
            )
            .Text(reason, LongestAccount, "Give the reason", "Reason");
        return Do(
            checks,
            () => Plan = [.. Plan!.Where(i => i.Name != name)],
            actor,
            at,
            "maintenance item dropped",
            $"{name}: {reason}"
        );
    }

    /// <summary>Records a service; the next one is due an interval later.</summary>
    /// <param name="item">Name of an item of the plan.</param>
    /// <param name="on">Day of the service; not in the future, not before the last one.</param>
    /// <param name="doneBy">Who did it; 1 to 80 characters.</param>
    /// <param name="text">What was found and done; 1 to 600 characters.</param>
    /// <param name="fileSha256">Report, if one was handed in.</param>
    /// <param name="today">Day at the site.</param>
    /// <param name="actor">Who enters it.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome RecordService(
        string item,
        DateOnly on,
        string doneBy,
        string text,
        string? fileSha256,
        DateOnly today,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(actor);
        var last = Services?.LastOrDefault(s => s.Item == item);
        var checks = new Checks()
            .Role(actor, Reporters)
            .That(
                Plan?.Any(i => i.Name == item) is true,
                "item",
                "Choose the item of the plan that was serviced.",
                nameof(MaintenanceService.Item)
            )
            .That(
                on <= today,
                "future",
                "The day of the service lies in the future; check it.",
                nameof(MaintenanceService.On)
            )
            .That(
                last is null || on >= last.On,
                "order",
                $"The service of {last?.On:yyyy-MM-dd} is entered already; a new one is not earlier.",
                nameof(MaintenanceService.On)
            )
            .Text(doneBy, LongestText, "Say who did it", nameof(MaintenanceService.DoneBy))
            .Text(
                text,
                LongestAccount,
                "Say what was found and done",
                nameof(MaintenanceService.Text)
            );
        return Do(
            checks,
            () =>
                Services = [
                    .. Services ?? [],
                    new(item, on, doneBy.Trim(), text.Trim(), fileSha256, actor.PrintedName),
                ],
            actor,
            at,
            $"serviced: {item}"
        );
    }
}
