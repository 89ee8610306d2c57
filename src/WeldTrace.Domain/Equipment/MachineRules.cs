using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Equipment;

/// <summary>Floor rule F5, the machine's part: it is in use, serviced, and can hold the windows of the procedure.</summary>
public static class MachineRules
{
    private const string Source = "ISO 25239-5:2020 4.4.1-4.4.3; NASA-STD-5006A GWR 13-15, 21, 22";

    /// <summary>Judges the rule.</summary>
    /// <param name="machine">Machine chosen; null when none is.</param>
    /// <param name="procedure">Content of the procedure to be welded to; null when there is none.</param>
    /// <param name="today">Day at the site.</param>
    public static RuleVerdict ForWelding(
        Machine? machine,
        ProcedureContent? procedure,
        DateOnly today
    )
    {
        var against = Against(machine, procedure, today);
        return new(
            "F5",
            "Machine in order",
            against is null ? RuleStanding.Holds : RuleStanding.Forbids,
            against ?? Holds(machine!, today),
            Source
        );
    }

    private static string? Against(Machine? machine, ProcedureContent? procedure, DateOnly today)
    {
        if (machine is null)
        {
            return "No machine is chosen; scan or choose one.";
        }

        var missed = machine
            .Maintenance.Where(d => d.On(today) == MaintenanceStanding.Locking)
            .Select(d =>
                $"{d.Item.Name} was due on {d.DueOn:yyyy-MM-dd} and its grace ran out on {d.WeldsUntil:yyyy-MM-dd}"
            )
            .ToList();
        var standing = machine.Standing;
        return standing.State switch
        {
            MachineState.Locked =>
                $"{machine.Name} is locked since {standing.Because!.On:yyyy-MM-dd} ({standing.Because.Text}); an engineer or the quality manager must look into it and clear it.",
            MachineState.NeedsReproducibilityTest =>
                $"{machine.Name} needs {MachineStanding.TestWeldsNeeded} satisfactory test welds since {standing.Because!.On:yyyy-MM-dd} ({MachineWords.Of(standing.Because.Kind)}); {standing.SatisfactoryTestWelds} are recorded.",
            _ when missed.Count > 0 =>
                $"{machine.Name} is locked: {string.Join("; ", missed)}. Record the service first.",
            _ => Beyond(machine, procedure),
        };
    }

    private static string? Beyond(Machine machine, ProcedureContent? procedure)
    {
        var beyond = (procedure?.Windows ?? [])
            .Select(w => machine.Capability?.Against(w))
            .OfType<string>()
            .ToList();
        return beyond.Count == 0
            ? null
            : $"{machine.Name} can't hold the procedure: {string.Join(" ", beyond)} Take another machine or revise the window.";
    }

    private static string Holds(Machine machine, DateOnly today)
    {
        var overdue = machine
            .Maintenance.Where(d => d.On(today) == MaintenanceStanding.Overdue)
            .Select(d =>
                $"{d.Item.Name}, due {d.DueOn:yyyy-MM-dd}, locks after {d.WeldsUntil:yyyy-MM-dd}"
            )
            .ToList();
        return overdue.Count == 0
            ? $"{machine.Name} is in use; nothing of its maintenance plan is overdue."
            : $"{machine.Name} is in use, but service is overdue: {string.Join("; ", overdue)}.";
    }
}
