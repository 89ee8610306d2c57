namespace WeldTrace.Domain.Equipment;

/// <summary>How a machine stands, as it follows from its log (ISO 25239-5:2020 4.4.1 to 4.4.3).</summary>
/// <param name="State">State.</param>
/// <param name="Because">The event that put it there; null while it is in use.</param>
/// <param name="SatisfactoryTestWelds">Satisfactory test welds in a row since the event that asked for them.</param>
public sealed record MachineStanding(
    MachineState State,
    MachineEvent? Because,
    int SatisfactoryTestWelds
)
{
    /// <summary>Satisfactory test welds after which a machine may be opened again (ISO 25239-5:2020 4.4.2).</summary>
    public const int TestWeldsNeeded = 3;

    /// <summary>Events after which production waits for test welds (ISO 25239-5:2020 4.4.2; NASA-STD-5006A GWR 15).</summary>
    public static IReadOnlyList<MachineEventKind> AskForTestWelds { get; } =
    [
        MachineEventKind.Installed,
        MachineEventKind.Refurbished,
        MachineEventKind.CriticalRepair,
        MachineEventKind.Moved,
        MachineEventKind.Dislodged,
    ];

    /// <summary>Events that lock the machine until somebody clears it (ISO 25239-5:2020 4.4.1, 4.4.3).</summary>
    public static IReadOnlyList<MachineEventKind> Lock { get; } =
    [MachineEventKind.Malfunction, MachineEventKind.Doubt];

    /// <summary>Whether the test welds suffice to open the machine again.</summary>
    public bool HasTestWelds => SatisfactoryTestWelds >= TestWeldsNeeded;

    /// <summary>Reads a log from its beginning.</summary>
    /// <param name="log">Events in the order of their entry.</param>
    public static MachineStanding Of(IReadOnlyList<MachineEvent> log)
    {
        ArgumentNullException.ThrowIfNull(log);
        MachineEvent? locked = null;
        MachineEvent? untested = null;
        var welds = 0;
        foreach (var entry in log)
        {
            if (Lock.Contains(entry.Kind))
            {
                locked = entry;
            }
            else if (AskForTestWelds.Contains(entry.Kind))
            {
                (untested, welds) = (entry, 0);
            }
            else
            {
                (locked, untested, welds) = entry switch
                {
                    { Kind: MachineEventKind.Cleared } => (null, untested, welds),
                    { Kind: MachineEventKind.Reopened } => (locked, null, 0),
                    { Weld.IsSatisfactory: true } => (locked, untested, welds + 1),
                    { Weld: not null } => (locked, untested, 0),
                    _ => (locked, untested, welds),
                };
            }
        }

        return locked is not null ? new(MachineState.Locked, locked, welds)
            : untested is not null ? new(MachineState.NeedsReproducibilityTest, untested, welds)
            : new(MachineState.InUse, null, 0);
    }
}
