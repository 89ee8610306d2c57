using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Lots;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Tests.Access;

/// <summary>Forming a lot of the vessels that are in none, choosing the samples of another, and accepting a third.</summary>
internal static class LotForms
{
    public static IReadOnlyList<FormRow> Rows { get; } =
    [
        new(
            "MakeLot make-lot",
            "engineer quality",
            Routes.NewLot,
            ("In.Number", "PL-26-10"),
            ("In.DesignId", SentForm.Choice("sampled by lot")),
            ("In.ProcedureId", SentForm.Choice("Lap weld of reservoir ends")),
            ("In.MaterialLotId", ""),
            ("In.From", "2026-01-01"),
            ("In.Until", "2030-12-31")
        ),
        new(
            "RecordProductionTest production-test",
            "inspector",
            Routes.NewProductionTest,
            ("In.Mark", "PT-26-02"),
            ("In.MachineId", SentForm.Choice("antry")),
            ("In.ProcedureRevisionId", SentForm.Choice("Lap weld of reservoir ends")),
            ("In.ToolId", SentForm.Choice("T-")),
            ("In.Result", "Visual without finding"),
            ("In.Verdict", "passed")
        ),
        FormRow.Of(
            "LotSigning choose-samples",
            "inspector quality",
            db => AtAsync(db, LotState.Gathering)
        ),
        FormRow.Of(
            "LotSigning accept-lot",
            "quality inspector",
            db => AtAsync(db, LotState.Sampling)
        ),
    ];

    private static async Task<string> AtAsync(WeldTraceDbContext db, LotState state) =>
        Routes.Lot(
            (
                await db
                    .ProductionLots.Where(l => l.State == state)
                    .OrderBy(l => l.Number)
                    .FirstAsync()
            ).Id
        );
}
