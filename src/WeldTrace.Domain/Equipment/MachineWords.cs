namespace WeldTrace.Domain.Equipment;

/// <summary>Words for what a machine's record says.</summary>
public static class MachineWords
{
    /// <summary>The word for a state, as shown.</summary>
    public static string Of(MachineState state) =>
        state switch
        {
            MachineState.InUse => "in use",
            MachineState.NeedsReproducibilityTest => "needs reproducibility test",
            MachineState.Locked => "locked",
            _ => throw new ArgumentOutOfRangeException(nameof(state), state, "Unknown state."),
        };

    /// <summary>The words for an event.</summary>
    public static string Of(MachineEventKind kind) =>
        kind switch
        {
            MachineEventKind.Installed => "newly installed",
            MachineEventKind.Refurbished => "refurbished",
            MachineEventKind.CriticalRepair =>
                "critical component repaired or replaced after damage or malfunction",
            MachineEventKind.OtherRepair => "other repair",
            MachineEventKind.Moved => "relocated, or moved outside its design",
            MachineEventKind.Dislodged => "dislodged",
            MachineEventKind.Malfunction => "malfunction",
            MachineEventKind.Doubt => "doubt",
            MachineEventKind.TestWeld => "test weld",
            MachineEventKind.Cleared => "cleared",
            MachineEventKind.Reopened => "opened again",
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown event."),
        };

    /// <summary>The words for how an item of the maintenance plan stands.</summary>
    public static string Of(MaintenanceStanding standing) =>
        standing switch
        {
            MaintenanceStanding.Done => "not due",
            MaintenanceStanding.Soon => "due soon",
            MaintenanceStanding.Overdue => "overdue",
            MaintenanceStanding.Locking => "overdue, locks the machine",
            _ => throw new ArgumentOutOfRangeException(
                nameof(standing),
                standing,
                "Unknown standing."
            ),
        };
}
