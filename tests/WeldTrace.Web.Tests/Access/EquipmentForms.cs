using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Tests.Access;

/// <summary>Machines and instruments. Bench 2 has been moved, and waits for its test welds.</summary>
internal static class EquipmentForms
{
    public static IReadOnlyList<FormRow> Rows { get; } =
    [
        new(
            "NewMachine new-machine",
            FormTable.Office,
            Routes.NewMachine,
            ("In.Name", "Bench 3"),
            ("In.Description", "serial 4471"),
            ("In.ControlMode", "force")
        ),
        FormRow.Of(
            "DescribeMachine capability",
            FormTable.Office,
            db => AtAsync(db, Routes.MachineCapability),
            ("In.SpindleSpeed", "3000"),
            ("In.TravelSpeed", "1500"),
            ("In.Force", "30"),
            ("In.Torque", "80")
        ),
        FormRow.Of(
            "ReportMachine report",
            FormTable.Working,
            db => AtAsync(db, Routes.ReportMachine),
            ("In.Kind", "Malfunction"),
            ("In.Text", "The spindle brake drags")
        ),
        FormRow.Of(
            "ShowMachine release-machine",
            FormTable.Office,
            db => AtAsync(db, Routes.Machine),
            ("In.Text", "Brake set anew and tried")
        ),
        FormRow.Of(
            "RecordTestWeld test-weld",
            FormTable.Bench,
            db => AtAsync(db, Routes.MachineTestWeld),
            ("In.On", FormTable.Today),
            ("In.WelderId", SentForm.Choice("Tomas Reyes")),
            ("In.ExaminerId", SentForm.Choice("Amara Diallo")),
            ("In.Verdict", SentForm.Choice("satisfactory")),
            ("In.Text", "Bend and section: no imperfection")
        ),
        FormRow.Of(
            "MaintainMachine plan",
            FormTable.Office,
            db => AtAsync(db, Routes.MachineMaintenance),
            ("Plan.Name", "Spindle"),
            ("Plan.Work", "WI-12"),
            ("Plan.EveryDays", "180")
        ),
        FormRow.Of(
            "MaintainMachine service",
            FormTable.Working,
            db => AtAsync(db, Routes.MachineMaintenance),
            ("Done.On", FormTable.Today),
            ("Done.DoneBy", "T. Reyes"),
            ("Done.Text", "Greased")
        ),
        FormRow.Of(
            "MaintainMachine drop",
            FormTable.Office,
            db => AtAsync(db, Routes.MachineMaintenance),
            ("Drop.Reason", "Sealed for life")
        ),
        FormRow.Of(
            "PushLogs give-log-token",
            "admin",
            db => AtAsync(db, Routes.PushLogs),
            ("In.Label", "Computer of bench 2")
        ),
        FormRow.Of(
            "PushLogs withdraw-log-token",
            "admin",
            db => AtAsync(db, Routes.PushLogs),
            ("Out.Label", SentForm.Choice("Computer of bench 2"))
        ),
        new(
            "NewInstrument new-instrument",
            FormTable.Bench,
            Routes.NewInstrument,
            ("In.Mark", "CAL-77"),
            ("In.Description", "Calliper"),
            ("In.Unit", "mm"),
            ("In.Upper", "150"),
            ("In.Resolution", "0.01"),
            ("In.LargestError", "0.02")
        ),
        new(
            "ImportInstruments import-instruments",
            FormTable.Bench,
            Routes.ImportInstruments,
            ("In.File", ""),
            (
                "In.Text",
                "mark,measures,description,unit,to,resolution,largest error\nCAL-78,length,Calliper,mm,150,0.01,0.02"
            ),
            ("In.IsConfirmed", "true")
        ),
        FormRow.Of(
            "ShowInstrument withdraw-instrument",
            "quality inspector",
            db => AtAsync(db, "CAL-77"),
            ("Back.Reason", "Dropped")
        ),
        new(
            "NewInstrument new-instrument",
            FormTable.Bench,
            Routes.NewInstrument,
            ("In.Mark", "TC-77"),
            ("In.Kind", SentForm.Choice("emperature")),
            ("In.Description", "Thermocouple of furnace 2"),
            ("In.Unit", "°C"),
            ("In.Upper", "600"),
            ("In.Resolution", "1"),
            ("In.LargestError", "3")
        ),
        FormRow.Of(
            "ShowInstrument calibrate",
            "inspector quality",
            db => AtAsync(db, "TC-77"),
            ("In.On", FormTable.Today),
            ("In.Laboratory", "Bay metrology"),
            ("In.CertificateNumber", "BM-1"),
            ("In.AsFoundError", "0.01")
        ),
    ];

    private static async Task<string> AtAsync(WeldTraceDbContext db, Func<Guid, string> address) =>
        address((await db.Machines.SingleAsync(m => m.Name == "Bench 2")).Id);

    private static async Task<string> AtAsync(WeldTraceDbContext db, string mark) =>
        Routes.Instrument((await db.Instruments.SingleAsync(i => i.Mark == mark)).Id);
}
