using System.Text;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Procedures;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Persistence;
using WeldTrace.Web.Demo;

namespace WeldTrace.Web.Tests.Access;

/// <summary>A vessel is planned and prepared; a rule is waived; a run is ended, judged and signed, another one is interrupted.</summary>
internal static class WeldForms
{
    private const string Welder = "operator";
    private const string Preparers = "operator inspector engineer";
    private const string Vessel = "NR10-0007";
    private const string OtherVessel = "NR10-0006";

    public static IReadOnlyList<FormRow> Rows { get; } =
    [
        new(
            "PlanVessel plan-vessel",
            "engineer",
            Routes.NewVessel,
            ("In.Serial", "NR10-0901"),
            ("In.ProductionLot", "L9"),
            ("In.Components[0].Serial", "FC-1"),
            ("In.Components[0].Name", "shell")
        ),
        new(
            "PrepareJoint clean",
            Preparers,
            Routes.PrepareJoint("NR10-0009", "J1"),
            ("Clean.Method", "Brushed and wiped"),
            ("Clean.FixtureIsClean", "true")
        ),
        new(
            "PrepareJoint fit-up",
            Preparers,
            Routes.PrepareJoint("NR10-0009", "J1"),
            ("Fit.Gap", "0.1"),
            ("Fit.Mismatch", "0.1"),
            ("Fit.InstrumentMark", "MS-04")
        ),
        new(
            "AskConcession concession",
            FormTable.Office,
            Routes.AskConcession("NR10-0010", 20, "F8"),
            ("In.Reason", "Cleaned and measured before the eyes of both")
        ),
        FormRow.Of("ShowConcession grant", "quality", db => OfRuleAsync(db, "F8")),
        FormRow.Of(
            "ShowConcession decline",
            "quality engineer",
            db => OfRuleAsync(db, "F7"),
            ("Back.DeclinedBecause", "Wait for the certificate")
        ),
        Starting(Vessel, 20),
        FormRow.Of("EndRun end-run", Welder, db => AtRunAsync(db, Vessel, Routes.EndRun)),
        new("ReadLog read-log", "operator engineer", BringLogAsync),
        FormRow.Of(
            "CorrectPhases correct-phases",
            "engineer",
            db => AtRunAsync(db, Vessel, Routes.CorrectPhases),
            ("In.Reason", "The dwell began later")
        ),
        FormRow.Of(
            "ReviewSignal review-signal",
            "engineer quality",
            SignalAsync,
            ("In.Conclusion", "NoCauseFound"),
            ("In.Text", "Tool, clamps and sensor looked at")
        ),
        FormRow.Of("SignRun sign-run", Welder, db => AtRunAsync(db, Vessel, Routes.SignRun)),
        ToolForms.Cleaning("T-0141"),
        Starting(OtherVessel, 40),
        FormRow.Of(
            "InterruptRun interrupt-run",
            Welder,
            db => AtRunAsync(db, OtherVessel, Routes.InterruptRun),
            ("In.Travelled", "180"),
            ("In.EndNote", "Spindle alarm")
        ),
    ];

    private static FormRow Starting(string serial, int step) =>
        new(
            "WeldStep start-run",
            Welder,
            Routes.WeldStep(serial, step) + "?machine=Gantry%201&tool=T-0141",
            ("In.Travel", "CounterClockwise"),
            ("In.FitUp", "true"),
            ("In.Parameters", "true"),
            ("In.Preheat", "true")
        );

    private static async Task<string> OfRuleAsync(WeldTraceDbContext db, string rule) =>
        Routes.Concession((await db.Concessions.SingleAsync(c => c.RuleId == rule)).Id);

    // The run with the excursion, whose force stands out among the others.
    private static async Task<string> SignalAsync(WeldTraceDbContext db) =>
        Routes.ReviewSignal(
            (await db.SignalReviews.FirstAsync()).RunId,
            nameof(WeldParameter.AxialForce)
        );

    /// <summary>Brings the log of the run that was ended, and goes where it is read.</summary>
    private static async Task<string> BringLogAsync(DemoSite site)
    {
        var log = new DemoLog(
            new DemoRun
            {
                Overlap = Length.FromMillimetres(21.64),
                PlungeDepth = Length.FromMillimetres(5.7),
                SamplesPerSecond = 20,
            }
        ).ToCsv();
        var visit = await site.VisitAsync(DemoPeople.Operator);
        var answer = await visit.BringAsync(
            await site.ReadAsync(db => AtRunAsync(db, Vessel, Routes.LogUpload)),
            Encoding.UTF8.GetBytes(log)
        );
        return answer.Headers.Location!.ToString();
    }

    private static async Task<string> AtRunAsync(
        WeldTraceDbContext db,
        string serial,
        Func<Guid, string> address
    ) =>
        address(
            (await db.WeldRuns.SingleAsync(r => r.VesselSerial == serial && r.SignedAt == null)).Id
        );
}
