using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Findings;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Tests.Access;

/// <summary>Tests with invented readings that pass, findings, acceptance and shipping.</summary>
internal static class TestForms
{
    private const string Inspector = "inspector";

    private static readonly byte[] Photograph = Pictures.SamplePictures.Encoded(1200, 800);

    public static IReadOnlyList<FormRow> Rows { get; } =
    [
        new(
            "RecordLeakTest leak-test",
            Inspector,
            Routes.LeakStep("NR10-0004", 80),
            ("In.Readings[0].Seconds", "0"),
            ("In.Readings[0].GaugePressure", "10.0500"),
            ("In.Readings[0].GasTemperature", "20.10"),
            ("In.Readings[1].Seconds", "1800"),
            ("In.Readings[1].GaugePressure", "10.0494"),
            ("In.Readings[1].GasTemperature", "20.10"),
            ("In.Readings[2].Seconds", "3600"),
            ("In.Readings[2].GaugePressure", "10.0488"),
            ("In.Readings[2].GasTemperature", "20.10"),
            ("In.AtmosphericPressure", "1012"),
            ("In.GaugeUncertainty", "0.2"),
            ("In.TemperatureUncertainty", "0.02"),
            ("In.VolumeUncertaintyPercent", "0.5"),
            ("In.Gauge", "G-12"),
            ("In.Thermometer", "TH-3"),
            ("In.CautionsRead", "true"),
            ("In.Log", SentForm.File([]))
        ),
        FormRow.Of("TestSigning sign-test", Inspector, AtLeakTestAsync),
        new(
            "TakeInSection section",
            Inspector,
            Routes.SectionStep("NR10-0005", 70),
            ("In.Specimen", "NR10-0005-M1"),
            ("In.Angle", "120"),
            ("In.Etchant", "Keller's reagent, 20 s"),
            ("In.Magnification", "scale bar 5 mm"),
            ("In.MethodEdition", "2003"),
            ("In.Instrument", "MS-04"),
            ("In.Photograph", SentForm.File(Photograph))
        ),
        FormRow.Of(
            "MeasureSection section-scale",
            Inspector,
            AtSectionAsync,
            ("Scale.KnownPoints", "100,700 600,700"),
            ("Scale.KnownLength", "5.00"),
            ("Scale.KnownUncertainty", "0.005"),
            ("Scale.Face", "300,100 900,100")
        ),
        FormRow.Of(
            "MeasureSection section-mark",
            Inspector,
            AtSectionAsync,
            ("Mark.Subject", "Underfill"),
            ("Mark.Points", "500,100 500,110")
        ),
        FormRow.Of(
            "MeasureSection section-strike",
            Inspector,
            AtSectionAsync,
            ("Strike.Number", "1"),
            ("Strike.Reason", "a shadow of the lamp")
        ),
        FormRow.Of(
            "MeasureSection section-conclude",
            Inspector,
            AtSectionAsync,
            ("End.Seen", "No imperfection")
        ),
        new(
            "BeginPressureTest pressure-begin",
            Inspector,
            Routes.PressureStep("NR10-0003", 90),
            ("In.Gauge", "G-31"),
            ("In.Thermometer", "TH-3"),
            ("In.DimensionInstrument", "MS-04"),
            ("In.GaugeUncertainty", "0.05"),
            ("In.TemperatureUncertainty", "0.1"),
            ("In.AtmosphericPressure", "1012"),
            ("In.DimensionName", "outer diameter at mid-length"),
            ("In.DimensionBefore", "170.02"),
            ("In.DimensionUncertainty", "0.005"),
            ("In.CautionsRead", "true")
        ),
        new(
            "RecordStage pressure-stage",
            Inspector,
            Routes.PressureStep("NR10-0003", 90),
            // Above the stage's tolerance: the test stands, and the next form decides.
            ("In.StartPressure", "41.30"),
            ("In.StartTemperature", "18.4"),
            ("In.EndPressure", "41.10"),
            ("In.EndTemperature", "18.4"),
            ("In.HeldSeconds", "620"),
            ("In.Log", SentForm.File([]))
        ),
        FormRow.Of(
            "PlanDepartures decide-departure",
            "engineer quality",
            async db =>
                Routes.PressureTest(
                    (await db.PressureTests.SingleAsync(t => t.SignedAt == null)).Id
                ),
            ("Decide.Choice", "on"),
            ("Decide.Reason", "The overshoot stays below the proof pressure")
        ),
        new(
            "RecordStage pressure-stage",
            Inspector,
            Routes.PressureStep("NR10-0003", 90),
            ("In.Dimension", "170.03")
        ),
        new(
            "RecordStage pressure-stage",
            Inspector,
            Routes.PressureStep("NR10-0003", 90),
            // It loses 5 bar: the hold fails, and the next form has it repeated.
            ("In.StartPressure", "60.40"),
            ("In.StartTemperature", "18.4"),
            ("In.EndPressure", "55.40"),
            ("In.EndTemperature", "18.4"),
            ("In.HeldSeconds", "620"),
            ("In.Log", SentForm.File([]))
        ),
        FormRow.Of(
            "PlanDepartures repeat-hold",
            "engineer quality",
            async db =>
                Routes.PressureTest(
                    (await db.PressureTests.SingleAsync(t => t.SignedAt == null)).Id
                ),
            ("Again.Reason", "A fitting leaked; it is tightened")
        ),
        FormRow.Of(
            "TestSigning withdraw-test",
            "inspector quality",
            async db =>
                Routes.PressureTest(
                    (await db.PressureTests.SingleAsync(t => t.SignedAt == null)).Id
                ),
            ("Back.Reason", "Gauge was knocked")
        ),
        new("SignOff sign-off", Inspector, Routes.SignOffStep("NR10-0002", 110)),
        new(
            "ShipVessel ship-vessel",
            "quality inspector",
            Routes.ShipVessel("NR10-0002"),
            ("In.Consignee", "Float store, Lisbon"),
            ("In.Papers", "DN-0412")
        ),
        new(
            "ReportFinding report-finding",
            FormTable.Working,
            Routes.ReportFinding("NR10-0009"),
            ("In.Description", "Scratch beside the joint")
        ),
        FormRow.Of(
            "FindingActs state-cause",
            FormTable.Bench,
            db => AtFindingAsync(db, "NR10-0009"),
            ("Why.Type", "Damage"),
            ("Why.Text", "Dropped on the bench")
        ),
        FormRow.Of(
            "ContainFinding contain",
            "inspector quality",
            async db =>
                Routes.Containment(
                    (
                        await db.Findings.SingleAsync(f =>
                            f.VesselSerial == "NR10-0009" && f.State != FindingState.Closed
                        )
                    ).Id
                ),
            ("In.Reason", "Only this one was dropped")
        ),
        FormRow.Of(
            "FindingActs record-board",
            "quality",
            db => AtFindingAsync(db, "NR10-0009"),
            ("Board.Reference", "MRB-1"),
            ("Board.Members", "Engineer, quality manager"),
            ("Board.Text", "Blend out and examine")
        ),
        FormRow.Of(
            "FindingSigning decide-finding",
            "quality inspector",
            db => AtFindingAsync(db, "NR10-0009"),
            ("In.Decision", "UseAsIs"),
            ("In.Reason", "Within the limits of the drawing")
        ),
        FormRow.Of(
            "FindingSigning close-finding",
            "quality inspector",
            db => AtFindingAsync(db, "NR10-0009"),
            ("Close.Note", "Measured again")
        ),
    ];

    private static async Task<string> AtLeakTestAsync(WeldTraceDbContext db) =>
        Routes.LeakTest((await db.LeakTests.SingleAsync(t => t.SignedAt == null)).Id);

    private static async Task<string> AtSectionAsync(WeldTraceDbContext db) =>
        Routes.MeasureSection((await db.Sections.SingleAsync(t => t.SignedAt == null)).Id);

    private static async Task<string> AtFindingAsync(WeldTraceDbContext db, string serial) =>
        Routes.Finding(
            (
                await db.Findings.SingleAsync(f =>
                    f.VesselSerial == serial && f.State != FindingState.Closed
                )
            ).Id
        );
}
