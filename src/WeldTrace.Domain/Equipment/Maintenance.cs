namespace WeldTrace.Domain.Equipment;

/// <summary>One item of a machine's maintenance plan (ISO 25239-5:2020 4.4.3).</summary>
/// <param name="Name">What is serviced; unique on the machine.</param>
/// <param name="Work">What is done, or the number of the instruction.</param>
/// <param name="EveryDays">Days between services, 1 to 3660.</param>
/// <param name="GraceDays">Days after the due day on which the machine may still weld, 0 to 365.</param>
/// <param name="From">Day from which the first interval counts.</param>
public sealed record MaintenanceItem(
    string Name,
    string Work,
    int EveryDays,
    int GraceDays,
    DateOnly From
);

/// <summary>A service that was done.</summary>
/// <param name="Item">Name of the item.</param>
/// <param name="On">Day of the service.</param>
/// <param name="DoneBy">Who did it; may be an outside company.</param>
/// <param name="Text">What was found and done.</param>
/// <param name="FileSha256">Report handed in; null when there was none.</param>
/// <param name="EnteredByName">Printed name of whoever entered it.</param>
public sealed record MaintenanceService(
    string Item,
    DateOnly On,
    string DoneBy,
    string Text,
    string? FileSha256,
    string EnteredByName
);

/// <summary>How an item of the plan stands on a day.</summary>
public enum MaintenanceStanding
{
    /// <summary>Not due for a while.</summary>
    Done,

    /// <summary>Due within two weeks.</summary>
    Soon,

    /// <summary>Past its due day, within the grace: a warning.</summary>
    Overdue,

    /// <summary>Past the grace: the machine is locked.</summary>
    Locking,
}

/// <summary>When an item of the plan is due.</summary>
/// <param name="Item">Item.</param>
/// <param name="Last">Last service; null before the first.</param>
public sealed record MaintenanceDue(MaintenanceItem Item, MaintenanceService? Last)
{
    private const int DaysAhead = 14;

    /// <summary>Last day on which the service is in time.</summary>
    public DateOnly DueOn => (Last?.On ?? Item.From).AddDays(Item.EveryDays);

    /// <summary>Last day on which the machine welds without the service.</summary>
    public DateOnly WeldsUntil => DueOn.AddDays(Item.GraceDays);

    /// <summary>How the item stands on a day.</summary>
    public MaintenanceStanding On(DateOnly today) =>
        today > WeldsUntil ? MaintenanceStanding.Locking
        : today > DueOn ? MaintenanceStanding.Overdue
        : today.AddDays(DaysAhead) >= DueOn ? MaintenanceStanding.Soon
        : MaintenanceStanding.Done;
}
