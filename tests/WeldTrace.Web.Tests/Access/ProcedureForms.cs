using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Tests.Access;

/// <summary>Vessel designs and procedures, each revised.</summary>
internal static class ProcedureForms
{
    private const string Author = "engineer";

    public static IReadOnlyList<FormRow> Rows { get; } =
    [
        FormRow.Of(
            "ShowDesign revise",
            Author,
            async db =>
                Routes.Design((await db.VesselDesigns.SingleAsync(d => d.Number == "NR-10")).Id),
            ("New.Reason", "Thicker wall")
        ),
        FormRow.Of(
            "DrawDesign draw-design",
            Author,
            db => AtDraftAsync(db, Routes.EditDesign),
            ("In.PedCategory", ""),
            ("In.Title", "Reservoir, deep")
        ),
        FormRow.Of("ShowDesign release", "quality engineer", db => AtDraftAsync(db, Routes.Design)),
        FormRow.Of(
            "ShowProcedure revise",
            Author,
            async db =>
                Routes.Procedure(
                    (
                        await db.ProcedureRevisions.SingleAsync(r =>
                            r.State == ProcedureState.Released
                        )
                    ).Id
                ),
            ("New.Reason", "Trial of a second tool")
        ),
        FormRow.Of(
            "WriteProcedure write-procedure",
            Author,
            db => AtRevisionAsync(db, Routes.EditProcedure),
            ("In.Title", "Lap weld, second tool")
        ),
        FormRow.Of("ShowProcedure move", Author, db => AtRevisionAsync(db, Routes.Procedure)),
    ];

    private static async Task<string> AtDraftAsync(
        WeldTraceDbContext db,
        Func<Guid, string> address
    ) => address((await db.VesselDesigns.SingleAsync(d => d.State == DesignState.Draft)).Id);

    private static async Task<string> AtRevisionAsync(
        WeldTraceDbContext db,
        Func<Guid, string> address
    ) =>
        address((await db.ProcedureRevisions.SingleAsync(r => r.State == ProcedureState.Draft)).Id);
}
