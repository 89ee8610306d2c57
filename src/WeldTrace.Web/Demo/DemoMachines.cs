using WeldTrace.Domain.Equipment;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Web.Demo;

/// <summary>The invented machines: a gantry that welds, and a bench that was moved and awaits its test welds.</summary>
internal static class DemoMachines
{
    public static Machine Gantry(DemoCast cast, DemoClock clock)
    {
        var at = clock.AfterMinutes(5);
        var machine = Machine
            .Enter(
                "Gantry 1",
                "Gantry welder with rotary table",
                "force control",
                cast.Engineer,
                at
            )
            .Must();
        machine
            .Describe(
                new MachineCapability(
                    RotationSpeed.FromRevolutionsPerMinute(3000),
                    Speed.FromMillimetresPerMinute(2000),
                    Force.FromKilonewtons(60),
                    Torque.FromNewtonMetres(180)
                ),
                cast.Engineer,
                at,
                new MachineNameplate("own make", "GW-60, rotary table RT-400", "0417")
            )
            .Must();
        var today = DateOnly.FromDateTime(at.UtcDateTime);
        MaintenanceItem[] plan =
        [
            new("Guides and spindle", "Clean and grease, check play; WI-21", 90, 14, today),
            new("Clamp ring and anvil", "Check for burrs and wear; WI-22", 38, 7, today),
            new("Load cell and thermocouples", "Check against reference; WI-23", 180, 14, today),
        ];
        foreach (var item in plan)
        {
            machine.PlanMaintenance(item, cast.Engineer, at).Must();
        }

        return machine;
    }

    public static Machine Bench(DemoCast cast, DemoClock clock)
    {
        var at = clock.AfterMinutes(3);
        var machine = Machine
            .Enter("Bench 2", "Bench welder, serial 0093", "position control", cast.Engineer, at)
            .Must();
        var today = DateOnly.FromDateTime(at.UtcDateTime);
        machine
            .Report(
                MachineEventKind.Moved,
                today,
                "Moved from the old hall to bay 2, levelled anew.",
                null,
                today,
                cast.Operator,
                at
            )
            .Must();
        return machine;
    }
}
