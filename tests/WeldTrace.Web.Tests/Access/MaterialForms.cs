using Microsoft.EntityFrameworkCore;

namespace WeldTrace.Web.Tests.Access;

/// <summary>Lots, components, furnace loads.</summary>
internal static class MaterialForms
{
    private const string List =
        "number,alloy,temper,cast,form,inspection document\nL-902,6061,T6,C-902,tube,IC-902";

    public static IReadOnlyList<FormRow> Rows { get; } =
    [
        new(
            "NewMaterialLot new-lot",
            FormTable.Bench,
            Routes.NewMaterialLot,
            ("In.Number", "L-901"),
            ("In.Alloy", "6061"),
            ("In.Temper", "T6"),
            ("In.CastNumber", "C-901"),
            ("In.Form", "tube"),
            ("In.CertificateNumber", "IC-901"),
            ("In.Type", SentForm.Choice("3.1")),
            ("In.ProductStandard", "ASTM B241"),
            ("In.TensileStrength", "310"),
            ("In.ProofStrength", "280"),
            ("In.Elongation", "15"),
            ("In.Thickness", "5.0")
        ),
        FormRow.Of(
            "ShowMaterialLot file-lot",
            FormTable.Bench,
            async db =>
                Routes.MaterialLot(
                    (await db.MaterialLots.SingleAsync(l => l.Number == "L-901")).Id
                ),
            ("In.Type", SentForm.Choice("3.1")),
            ("In.ProductStandard", "ASTM B241, third printing")
        ),
        new(
            "ImportLots import-lots",
            FormTable.Bench,
            Routes.ImportLots,
            ("In.File", ""),
            ("In.Text", List),
            ("In.IsConfirmed", "true")
        ),
        new(
            "EnterComponents components",
            FormTable.Working,
            Routes.NewComponent,
            ("In.Serials", "FC-1\nFC-2"),
            ("In.PartKind", "shell"),
            ("In.Lot", SentForm.Choice("L-901")),
            ("In.MadeBy", "Float works")
        ),
        FormRow.Of(
            "ShowComponent scrap",
            FormTable.Working,
            async db =>
                Routes.Component((await db.Components.SingleAsync(c => c.Serial == "FC-2")).Id),
            ("In.Reason", "Dented in the store")
        ),
        new(
            "EnterHeatTreatment heat",
            FormTable.Working,
            Routes.NewHeatTreatment,
            ("In.Number", "F-901"),
            ("In.Furnace", "Furnace 2"),
            ("In.On", FormTable.Today),
            ("In.Instruction", "WI-40"),
            ("In.Lower", "170"),
            ("In.Upper", "180"),
            ("In.ShortestMinutes", "160"),
            ("In.LongestMinutes", "200"),
            ("In.Lowest", "171"),
            ("In.Highest", "178"),
            ("In.Minutes", "180"),
            ("In.InstrumentMark", "TC-77"),
            ("In.Parts", "FC-1")
        ),
    ];
}
