using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Tests.Access;

/// <summary>Tools and their designs.</summary>
internal static class ToolForms
{
    private const string Fitters = "operator engineer quality";

    public static IReadOnlyList<FormRow> Rows { get; } =
    [
        new(
            "NewToolDesign new-tool-design",
            "engineer",
            Routes.NewToolDesign,
            ("In.Number", "TD-90"),
            ("In.ShoulderDiameter", "16"),
            ("In.PinDiameter", "6"),
            ("In.PinLength", "5.6"),
            ("In.Material", "H13"),
            ("In.LifeLimit", "200"),
            ("In.HasSeparateParts", "true"),
            ("In.ShoulderLifeLimit", "400"),
            ("In.LifeEvidence", "Trial 3")
        ),
        FormRow.Of(
            "ShowToolDesign upkeep",
            "engineer",
            AtDesignAsync,
            ("In.LeastPinLength", "5.4"),
            ("In.LeastPinDiameter", "5.3"),
            ("In.InspectEvery", "4"),
            ("In.InspectionProcedure", "WI-31")
        ),
        FormRow.Of("ShowToolDesign evidence", FormTable.Office, AtDesignAsync),
        new(
            "EnterTool enter-tool",
            FormTable.Office,
            Routes.NewTool,
            ("In.DesignId", SentForm.Choice("TD-90")),
            ("In.Mark", "T-0901"),
            ("In.Pin", "P-1"),
            ("In.Shoulder", "S-1")
        ),
        new(
            "ImportTools import-tools",
            FormTable.Office,
            Routes.ImportTools,
            ("In.File", ""),
            ("In.Text", "mark,design,pin,shoulder\nT-0902,TD-90,P-2,S-2"),
            ("In.IsConfirmed", "true")
        ),
        FormRow.Of(
            "FitPart fit-part",
            Fitters,
            db => AtToolAsync(db, "T-0901", Routes.ToolParts),
            ("In.Kind", "Pin"),
            ("In.Mark", "P-9"),
            ("In.Why", "Wear"),
            ("In.EndNote", "Worn to its limit")
        ),
        Cleaning("T-0901"),
        FormRow.Of(
            "ShowTool change-tool",
            Fitters,
            db => AtToolAsync(db, "T-0901", Routes.Tool),
            ("In.Act", "Retire"),
            ("In.Why", "Breakage"),
            ("In.Reason", "Broke in the store")
        ),
    ];

    /// <summary>A tool is cleaned and looked at before it welds another joint.</summary>
    public static FormRow Cleaning(string mark) =>
        FormRow.Of(
            "InspectTool inspect",
            FormTable.Working,
            db => AtToolAsync(db, mark, Routes.InspectTool),
            ("In.Kind", "Cleaned"),
            ("In.Remark", "Brushed")
        );

    private static async Task<string> AtDesignAsync(WeldTraceDbContext db) =>
        Routes.ToolDesign((await db.ToolDesigns.SingleAsync(d => d.Number == "TD-90")).Id);

    private static async Task<string> AtToolAsync(
        WeldTraceDbContext db,
        string mark,
        Func<Guid, string> address
    ) => address((await db.Tools.SingleAsync(t => t.Mark == mark)).Id);
}
