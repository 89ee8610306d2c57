using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Testing.SignOff;

/// <summary>What was typed for an examination: how, how much, and what was found.</summary>
public sealed class ExaminationForm
{
    private const int Rows = 4;

    public PlannedExamination Method { get; set; }

    public string? MethodStandard { get; set; }

    public string? Acceptance { get; set; }

    public string? Procedure { get; set; }

    public string? Illuminance { get; set; }

    public string? Distance { get; set; }

    public string? Angle { get; set; }

    public string? Conditions { get; set; }

    /// <summary>Marks of the instruments, with commas between them.</summary>
    public string? Instruments { get; set; }

    /// <summary>Each mark by itself.</summary>
    public IReadOnlyList<string> Marks =>
        (Instruments ?? "").Split(
            [',', ';', '\n'],
            StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries
        );

    public string? Tested { get; set; }

    public string? NotTested { get; set; }

    // A form sent without any of them arrives as null.
    public List<FlawRow> Flaws
    {
        get;
        set => field = value ?? [];
    } = [];

    /// <summary>The form for a step, with the standards that the design's test plan names.</summary>
    public static ExaminationForm For(TestFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        var planned = (facts.Design.Content.Examinations ?? [])
            .Where(m => ExaminationReport.Methods.Contains(m.Method))
            .ToList();
        var named = planned.Find(m =>
            facts.Step.Title.Contains(
                ExaminationPlan.Word(m.Method),
                StringComparison.OrdinalIgnoreCase
            )
        );
        var missing = planned.Find(m => facts.NotYetExamined.Contains(m.Method));
        return (named ?? missing ?? planned.FirstOrDefault()) is { } method
            ? new()
            {
                Method = method.Method,
                MethodStandard = method.MethodStandard,
                Acceptance = $"{method.AcceptanceStandard}, {method.Level}",
            }
            : new();
    }

    /// <summary>Adds empty rows until there are some to type into.</summary>
    public void FillRows()
    {
        while (Flaws.Count < Rows)
        {
            Flaws.Add(new());
        }
    }

    public ExaminationReport Read(Entries entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        return new(
            Method,
            MethodStandard?.Trim() ?? "",
            Acceptance?.Trim() ?? "",
            Procedure?.Trim() ?? "",
            Method == PlannedExamination.Visual
                ? new ViewingConditions(
                    entries.Number(Illuminance, "lx", "Light", Name(nameof(Illuminance))),
                    entries.Number(Distance, "mm", "Distance of the eye", Name(nameof(Distance))),
                    entries.Number(Angle, "°", "Angle of the eye", Name(nameof(Angle)))
                )
                : null,
            Conditions?.Trim() ?? "",
            Tested?.Trim() ?? "",
            NotTested?.Trim() ?? "",
            [
                .. Flaws
                    .Index()
                    .Where(f => f.Item.IsFilled)
                    .Select(f => f.Item.Read(entries, f.Index)),
            ]
        );
    }

    /// <summary>Name of a control as the form posts it, without the form's own name.</summary>
    public static string Name(string field) => $"{nameof(SignOffForm.Examination)}.{field}";
}

/// <summary>One flaw as typed; a row left empty doesn't count.</summary>
public sealed class FlawRow
{
    public string? JointCode { get; set; }

    public string? Angle { get; set; }

    public string? What { get; set; }

    public string? Size { get; set; }

    public bool IsCrackLike { get; set; }

    public bool IsRejectable { get; set; }

    public bool IsFilled =>
        !string.IsNullOrWhiteSpace(What + Angle + Size) || IsCrackLike || IsRejectable;

    public Flaw Read(Entries entries, int row)
    {
        ArgumentNullException.ThrowIfNull(entries);
        return new(
            JointCode ?? "",
            entries.Number(Angle, "°", $"Flaw {row + 1}: angle", Field(nameof(Angle))),
            What?.Trim() ?? "",
            entries.Number(Size, "mm", $"Flaw {row + 1}: size", Field(nameof(Size))),
            IsCrackLike,
            IsRejectable
        );

        string Field(string name) =>
            ExaminationForm.Name(FormattableString.Invariant($"Flaws[{row}].{name}"));
    }
}
