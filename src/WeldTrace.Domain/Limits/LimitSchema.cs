using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.VesselDesigns;
using static WeldTrace.Domain.Limits.CellKind;

namespace WeldTrace.Domain.Limits;

/// <summary>The columns of each kind of table.</summary>
public static class LimitSchema
{
    /// <summary>Word in a cell that fits everything.</summary>
    public const string Any = "any";

    /// <summary>Variables whose range a rule set says.</summary>
    public static IReadOnlyList<string> Variables { get; } =
    ["alloy and temper", "thickness", "joint type", "tool design", "other essential variables"];

    /// <summary>Ways in which a rule set widens a variable.</summary>
    public static IReadOnlyList<string> Rules { get; } = ["as tested", "material group", "range"];

    /// <summary>Tests that a qualification may need.</summary>
    public static IReadOnlyList<string> Tests { get; } =
    [
        "visual",
        "penetrant",
        "radiographic or ultrasonic",
        "transverse tensile",
        "root bend",
        "face bend",
        "side bend",
        "macro section",
        "micro section",
        "hardness",
        "leak",
    ];

    /// <summary>Columns of a kind of table.</summary>
    public static IReadOnlyList<LimitColumn> Of(LimitKind kind) =>
        kind switch
        {
            LimitKind.TensileFactors =>
            [
                new("Material group", Words),
                new("Temper before welding", Words),
                new(
                    "After welding",
                    Choice,
                    Any,
                    "as welded",
                    "natural ageing",
                    "artificial ageing"
                ),
                new("Factor", Number),
                new("Temper of the minimum", Choice, "actual", "O", "T6"),
            ],
            LimitKind.BendFormers =>
            [
                new("Material group", Words),
                new("Temper", Words),
                new("Former, times thickness", OptionalNumber),
                new("By elongation", Choice, "no", "yes"),
            ],
            LimitKind.Imperfections =>
            [
                new("Imperfection", Words),
                new("From thickness, mm", OptionalNumber),
                new("Below thickness, mm", OptionalNumber),
                new("Fixed part, mm", Number),
                new("Part of the thickness", Number),
                new("At most, mm", OptionalNumber),
            ],
            LimitKind.ExtentOfTesting =>
            [
                new("Joint type", Words),
                new("Material group", Words),
                new("Test", Choice, Tests),
                new("Number", Number),
                new("From thickness, mm", OptionalNumber),
                new("Below thickness, mm", OptionalNumber),
            ],
            LimitKind.QualificationRange => RangeColumns,
            LimitKind.MaterialGroups => [new("Alloy", Words), new("Material group", Words)],
            LimitKind.MaterialMinima => MinimaColumns,
            LimitKind.LeastExaminations =>
            [
                new("Class of the weld", Choice, Enum.GetNames<JointClass>()),
                new("For", Words),
                new("Method", Choice, Methods),
                new("Or", Choice, [NoOther, .. Methods]),
            ],
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown kind."),
        };

    /// <summary>Word in the column of the other method when none serves as well.</summary>
    public const string NoOther = "none";

    private static IReadOnlyList<string> Methods { get; } =
    [.. Enum.GetValues<PlannedExamination>().Select(ExaminationPlan.Word)];

    private static IReadOnlyList<LimitColumn> RangeColumns { get; } =
    [
        new("Variable", Choice, Variables),
        new("Rule", Choice, Rules),
        new("Passes", Choice, Any, "one", "several"),
        new("Tested above, mm", OptionalNumber),
        new("Tested up to, mm", OptionalNumber),
        new("Lowest, times tested", OptionalNumber),
        new("Lowest, mm", OptionalNumber),
        new("Highest, times tested", OptionalNumber),
        new("At most, mm", OptionalNumber),
    ];

    private static IReadOnlyList<LimitColumn> MinimaColumns { get; } =
    [
        new("Alloy", Words),
        new("Temper", Words),
        new("Form", Words),
        new("From thickness, mm", OptionalNumber),
        new("Below thickness, mm", OptionalNumber),
        new("Rm, MPa", OptionalNumber),
        new("Rp0.2, MPa", OptionalNumber),
        new("A, %", OptionalNumber),
    ];
}
