using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Quantities;
using WeldTrace.TestSupport.Records;

namespace WeldTrace.Domain.Tests.Welding;

/// <summary>F5: every state of the machine, and of an instrument that the procedure names.</summary>
internal static class EquipmentCauses
{
    private const string Text = "Found at the start of the shift";

    public static IReadOnlyList<GateCause> All { get; } =
    [
        new(
            "F5",
            "no machine",
            ["No machine is chosen", "choose one"],
            () => GateCauses.Ready(f => f with { Machine = null })
        ),
        .. MachineStanding.Lock.Select(kind => After(kind, "is locked", "clear it")),
        .. MachineStanding.AskForTestWelds.Select(kind =>
            After(kind, "needs 3 satisfactory test welds", "0 are recorded")
        ),
        new(
            "F5",
            "window beyond the machine",
            ["can't hold the procedure", "Axial force", "revise the window"],
            () => With(Weak)
        ),
        new("F5", "service missed", ["guides", "Record the service first"], () => With(Unserviced)),
        new(
            "F5",
            "instrument not in the register",
            ["LC-1, which is not in the register"],
            () => Named(null)
        ),
        Instrument("instrument never calibrated", "no calibration on file", i => { }, false),
        Instrument("instrument withdrawn", "is out of use: Dropped", i => Withdraw(i)),
        Instrument("instrument out of tolerance", "out of tolerance", i => Calibrate(i, "0.6")),
        new(
            "F5",
            "calibration ran out",
            ["calibration of LC-1 ran out on 2027-03-02"],
            () => Named(LoadCell()) with { Today = new DateOnly(2027, 3, 2) }
        ),
        new(
            "F5",
            "instrument for indication only",
            ["is for indication only"],
            () => Named(SampleInstruments.Caliper("LC-1", isIndicationOnly: true))
        ),
    ];

    private static GateCause After(MachineEventKind kind, params string[] words) =>
        new(
            "F5",
            $"machine after {MachineWords.Of(kind)}",
            words,
            () =>
                With(machine =>
                    Accept.All(
                        machine.Report(
                            kind,
                            SampleTime.Day,
                            Text,
                            null,
                            SampleTime.Day,
                            SamplePeople.Engineer,
                            SampleTime.Start
                        )
                    )
                )
        );

    private static GateCause Instrument(
        string name,
        string words,
        Action<Instrument> change,
        bool isCalibrated = true
    ) =>
        new(
            "F5",
            name,
            [words],
            () =>
            {
                var instrument = isCalibrated ? LoadCell() : SampleInstruments.Uncalibrated("LC-1");
                change(instrument);
                return Named(instrument);
            }
        );

    private static Instrument LoadCell() =>
        SampleInstruments.Calibrated("LC-1", InstrumentKind.Force, "kN");

    private static WeldGateFacts With(Action<Machine> change)
    {
        var machine = SampleMachines.Entered();
        change(machine);
        return GateCauses.Ready(f => f with { Machine = machine });
    }

    private static void Weak(Machine machine) =>
        Accept.All(
            machine.Describe(
                new MachineCapability(null, null, Force.FromKilonewtons(8), null),
                SamplePeople.Engineer,
                SampleTime.Start
            )
        );

    private static void Unserviced(Machine machine) =>
        Accept.All(
            machine.PlanMaintenance(
                new("guides", "Clean and grease", 30, 5, SampleTime.Day.AddDays(-36)),
                SamplePeople.Engineer,
                SampleTime.Start
            )
        );

    private static void Withdraw(Instrument instrument) =>
        Accept.All(instrument.Withdraw("Dropped", SamplePeople.QualityManager, SampleTime.Start));

    private static void Calibrate(Instrument instrument, string error) =>
        Accept.All(
            instrument.Calibrate(
                SampleTime.Day.AddDays(1),
                "Calibration laboratory",
                "C-2",
                null,
                new Measured(error, "kN"),
                SampleTime.Day.AddDays(1),
                SamplePeople.Inspector,
                SampleTime.Start
            )
        );

    // The procedure names an instrument, which the register has or has not.
    private static WeldGateFacts Named(Instrument? instrument)
    {
        var shop = new SampleShop();
        var id = instrument?.Id ?? Guid.CreateVersion7(SampleTime.Start);
        shop.Procedure = SampleProcedures.Released(
            shop.ToolDesign,
            content: SampleProcedures.Content(shop.ToolDesign) with
            {
                Details = ProcedureDetails.None with
                {
                    Instruments = [new NamedRecord(id, "LC-1")],
                },
            }
        );
        return shop.Facts() with { Instruments = instrument is null ? [] : [instrument] };
    }
}
