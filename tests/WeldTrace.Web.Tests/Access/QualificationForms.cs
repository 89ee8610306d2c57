using System.Text;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Qualification;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Persistence;
using WeldTrace.Web.Demo;

namespace WeldTrace.Web.Tests.Access;

/// <summary>The qualification of the revision that was just put on trial: one piece is spoilt, the next is welded and examined.</summary>
internal static class QualificationForms
{
    private const string Welder = "operator";
    private const double PieceMillimetres = 400;

    public static IReadOnlyList<FormRow> Rows { get; } =
    [
        FormRow.Of(
            "PlanQualification plan",
            "engineer",
            async db =>
                Routes.PlanQualification(
                    (
                        await db.ProcedureRevisions.SingleAsync(r =>
                            r.State == ProcedureState.Trial
                        )
                    ).Id
                ),
            ("In.Number", "WPQR-901"),
            ("In.PieceLength", "400"),
            ("In.Discard", "50")
        ),
        ToolForms.Cleaning("T-0142"),
        Beginning,
        FormRow.Of(
            "ShowTestPiece discard",
            Welder,
            AtPieceAsync,
            ("Out.Travelled", "10"),
            ("Out.Reason", "Clamp slipped")
        ),
        ToolForms.Cleaning("T-0142"),
        Beginning,
        FormRow.Of(
            "ShowTestPiece finish",
            Welder,
            AtPieceAsync,
            ("In.Log", SentForm.File(Encoding.UTF8.GetBytes(Log())))
        ),
        FormRow.Of(
            "EnterResult result",
            "inspector",
            async db =>
                Routes.EnterResult(
                    (await RecordAsync(db)).Id,
                    (await RecordAsync(db))
                        .Plan.Tests.First(t => t.Kind == TestKind.Visual && t.PieceMark == "1")
                        .Id
                ),
            ("In.Method", "ISO 17637"),
            ("In.MethodEdition", "2016"),
            ("In.Acceptance", "ISO 25239-5"),
            ("In.AcceptanceEdition", "2020"),
            ("In.TestedOn", FormTable.Today),
            ("In.Instrument", "MS-04"),
            ("In.Findings", "none")
        ),
        FormRow.Of(
            "ShowQualification abandon",
            FormTable.Office,
            async db => Routes.Qualification((await RecordAsync(db)).Id),
            ("Out.Reason", "Another tool is tried first")
        ),
        FormRow.Of(
            "WithdrawProcedure withdraw",
            FormTable.Office,
            async db => Routes.Procedure((await RecordAsync(db)).ProcedureRevisionId),
            ("Out.Reason", "Another tool is tried first")
        ),
    ];

    private static FormRow Beginning =>
        FormRow.Of(
            "BeginPiece begin",
            "operator engineer",
            async db => Routes.BeginPiece((await RecordAsync(db)).Id, "1"),
            ("In.Machine", "Gantry 1"),
            ("In.Tool", "T-0142"),
            ("In.Lots", SentForm.Choice("6061"))
        );

    private static Task<QualificationRecord> RecordAsync(WeldTraceDbContext db) =>
        db.Qualifications.SingleAsync(q => q.Number == "WPQR-901");

    private static async Task<string> AtPieceAsync(WeldTraceDbContext db) =>
        Routes.TestPiece(
            (await db.TestPieces.SingleAsync(p => p.State == TestPieceState.Welding)).Id
        );

    // The first piece is welded at the lowest heat: the spindle at the foot of its window, the travel at the top of it.
    private static string Log() =>
        new DemoLog(
            new DemoRun
            {
                TrackRadius = Length.FromMillimetres(PieceMillimetres / (2 * Math.PI)),
                Overlap = Length.Zero,
                SpindleSpeed = RotationSpeed.FromRevolutionsPerMinute(770),
                TravelSpeed = Speed.FromMillimetresPerMinute(220),
                PlungeDepth = Length.FromMillimetres(5.7),
                SamplesPerSecond = 20,
            }
        ).ToCsv();
}
