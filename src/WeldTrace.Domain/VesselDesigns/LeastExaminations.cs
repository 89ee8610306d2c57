using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Procedures;

namespace WeldTrace.Domain.VesselDesigns;

/// <summary>Examinations that a weld of a class needs: one of several methods.</summary>
/// <param name="Class">Class of the weld.</param>
/// <param name="What">What it is for.</param>
/// <param name="AnyOf">Methods that serve.</param>
public sealed record LeastExamination(
    JointClass Class,
    string What,
    IReadOnlyList<PlannedExamination> AnyOf
);

/// <summary>The edition of the table of least examinations by which a design was drawn, with what it said.</summary>
/// <param name="By">The edition.</param>
/// <param name="Rows">What it asked for.</param>
public sealed record LeastExaminations(LimitReference By, IReadOnlyList<LeastExamination> Rows)
{
    /// <summary>What an edition of the table says.</summary>
    /// <param name="table">Table of least examinations.</param>
    public static LeastExaminations Of(LimitTable table)
    {
        ArgumentNullException.ThrowIfNull(table);
        return new(
            table.Reference,
            [.. LimitRow.Of(table, LimitKind.LeastExaminations).Select(r => Of(r.Cells))]
        );
    }

    internal static IReadOnlyList<LeastExamination> Shipped { get; } =
    [.. ShippedLimits.LeastExaminations.Rows.Select(Of)];

    private static LeastExamination Of(IReadOnlyList<string> cells) =>
        new(
            Enum.Parse<JointClass>(cells[0]),
            cells[1],
            [.. cells.Skip(2).Where(c => c != LimitSchema.NoOther).Select(Method)]
        );

    private static PlannedExamination Method(string word) =>
        Enum.GetValues<PlannedExamination>().Single(m => ExaminationPlan.Word(m) == word);
}
