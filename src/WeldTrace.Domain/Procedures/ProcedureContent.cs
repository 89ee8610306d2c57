using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Procedures;

/// <summary>What a procedure revision lays down; frozen once the revision has left <c>draft</c>.</summary>
/// <param name="Alloy">Parent alloy, for instance <c>6061</c>.</param>
/// <param name="Temper">Parent temper, for instance <c>T6</c>.</param>
/// <param name="Thickness">Thickness of the joint; above zero.</param>
/// <param name="JointType">Joint type in the trade's words, for instance <c>butt</c> or <c>lap</c>.</param>
/// <param name="ToolDesignId">Tool design that must be used.</param>
/// <param name="ToolDesignLabel">Number and revision of that design, as printed.</param>
/// <param name="SpindleSense">Sense of rotation, looking from the shoulder side on the work.</param>
/// <param name="Windows">One window for each parameter that is controlled or watched.</param>
/// <param name="DebounceSeconds">Shortest excursion that counts, in seconds; 0 or more.</param>
/// <param name="Notes">Anything else that the welder must know; may be empty.</param>
public sealed record ProcedureContent(
    string Alloy,
    string Temper,
    Length Thickness,
    string JointType,
    Guid ToolDesignId,
    string ToolDesignLabel,
    RotationSense SpindleSense,
    IReadOnlyList<ParameterWindow> Windows,
    decimal DebounceSeconds,
    string Notes
)
{
    /// <summary>Longest <see cref="Notes"/>.</summary>
    public const int LongestNotes = 4000;

    private const int LongestWord = 60;
    private const decimal LongestDebounceSeconds = 60;
    private const decimal LongestDebounceMillimetres = 1000;

    /// <summary>Shortest length of seam at which an excursion counts however short its time, in mm; null: only time counts.</summary>
    public decimal? DebounceMillimetres { get; init; }

    /// <summary>Everything else that is laid down; null in revisions written before it was asked for.</summary>
    public ProcedureDetails? Details { get; init; }

    /// <summary>The details, empty when none were written.</summary>
    public ProcedureDetails DetailsOrNone => Details ?? ProcedureDetails.None;

    /// <summary>Whether the joint is a butt joint, where the pin must stay inside the thickness.</summary>
    public bool IsButt => JointType.Contains("butt", StringComparison.OrdinalIgnoreCase);

    /// <summary>Thickness under the tool: that of the thinner side of a butt joint, else of both parts together.</summary>
    public Length StackThickness
    {
        get
        {
            var other = DetailsOrNone.Other?.Thickness ?? Thickness;
            return !IsButt ? Thickness + other
                : other < Thickness ? other
                : Thickness;
        }
    }

    /// <summary>The window of a parameter; null when the procedure doesn't watch it.</summary>
    public ParameterWindow? WindowOf(WeldParameter parameter) =>
        Windows.FirstOrDefault(w => w.Parameter == parameter);

    /// <summary>Everything that is wrong, each naming its field.</summary>
    public IReadOnlyList<Refusal> Check()
    {
        List<Refusal> refusals = [];
        RequireWord(Alloy, nameof(Alloy), "the parent alloy", refusals);
        RequireWord(Temper, nameof(Temper), "the temper", refusals);
        RequireWord(JointType, nameof(JointType), "the joint type", refusals);
        if (Thickness.Millimetres is <= 0 or > 200)
        {
            refusals.Add(
                new(
                    "thickness",
                    "Give the joint's thickness, above 0 and at most 200 mm.",
                    nameof(Thickness)
                )
            );
        }

        if (DebounceSeconds is < 0 or > LongestDebounceSeconds)
        {
            refusals.Add(
                new(
                    "debounce",
                    $"Give the shortest excursion that counts, 0 to {LongestDebounceSeconds} s.",
                    nameof(DebounceSeconds)
                )
            );
        }

        if (DebounceMillimetres is <= 0 or > LongestDebounceMillimetres)
        {
            refusals.Add(
                new(
                    "debounce-length",
                    $"Give the shortest length of an excursion that counts, above 0 and at most {LongestDebounceMillimetres} mm, or leave it out.",
                    nameof(DebounceMillimetres)
                )
            );
        }

        if (Notes.Length > LongestNotes)
        {
            refusals.Add(
                new(
                    "notes",
                    $"The notes are longer than {LongestNotes} characters; shorten them.",
                    nameof(Notes)
                )
            );
        }

        if (ToolDesignId == Guid.Empty)
        {
            refusals.Add(new("tool-design", "Choose the tool design.", nameof(ToolDesignId)));
        }

        CheckWindows(refusals);
        refusals.AddRange(this.CheckDetails());
        return refusals;
    }

    private void CheckWindows(List<Refusal> refusals)
    {
        foreach (var twice in Windows.GroupBy(w => w.Parameter).Where(g => g.Count() > 1))
        {
            refusals.Add(
                new(
                    "window-twice",
                    $"{ParameterNames.Of(twice.Key)} has two windows; keep one.",
                    nameof(Windows)
                )
            );
        }

        foreach (
            var needed in new[] { WeldParameter.SpindleSpeed, WeldParameter.TravelSpeed }.Where(p =>
                WindowOf(p) is null
            )
        )
        {
            refusals.Add(
                new(
                    "window-missing",
                    $"{ParameterNames.Of(needed)} needs a window.",
                    nameof(Windows)
                )
            );
        }

        refusals.AddRange(Windows.SelectMany(w => w.Check()));
    }

    private static void RequireWord(string value, string field, string what, List<Refusal> refusals)
    {
        if (string.IsNullOrWhiteSpace(value) || value.Length > LongestWord)
        {
            refusals.Add(new("missing", $"Give {what}, 1 to {LongestWord} characters.", field));
        }
    }
}
