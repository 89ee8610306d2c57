using WeldTrace.Domain.Qualification;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Qualifications.Plan;

/// <summary>What was typed for a plan.</summary>
public sealed class PlanQualificationForm
{
    public string? Number { get; set; }

    public Guid Groups { get; set; }

    public Guid ExtentOfTesting { get; set; }

    public Guid TensileFactors { get; set; }

    public Guid BendFormers { get; set; }

    public Guid Imperfections { get; set; }

    public Guid QualificationRange { get; set; }

    public bool SeveralPasses { get; set; }

    public string? PieceLength { get; set; } = "500";

    public string? Discard { get; set; } = "50";

    public string? Volumetric { get; set; } = nameof(TestKind.Ultrasonic);

    // A form without any box ticked posts nothing, which is bound as null.
    public List<TestKind> Extra
    {
        get;
        set => field = value ?? [];
    } = [];

    public string? Minimum { get; set; }

    public string? MinimumSource { get; set; }

    public string? OtherMinimum { get; set; }

    public string? OtherMinimumSource { get; set; }

    public string? DesignValue { get; set; }

    public string? DesignDocument { get; set; }

    public string? Elongation { get; set; }

    public string? DesignFormer { get; set; }

    public string? DesignFormerDocument { get; set; }

    public PlanRequest Read(Entries entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        return new PlanRequest(
            SeveralPasses,
            Millimetres(entries, PieceLength, "Length of the weld", nameof(PieceLength)),
            Millimetres(entries, Discard, "Length discarded at both ends", nameof(Discard)),
            entries.Choice<TestKind>(Volumetric, "Volumetric method", nameof(Volumetric)),
            Extra,
            new TensileBasis(
                entries.OptionalNumber(Minimum, "MPa", "Minimum of the parent", nameof(Minimum)),
                Text(MinimumSource),
                entries.OptionalNumber(
                    OtherMinimum,
                    "MPa",
                    "Minimum of the other side",
                    nameof(OtherMinimum)
                ),
                Text(OtherMinimumSource),
                entries.OptionalNumber(DesignValue, "MPa", "Design value", nameof(DesignValue)),
                Text(DesignDocument)
            ),
            entries.OptionalNumber(Elongation, "%", "Least elongation", nameof(Elongation)),
            entries.OptionalNumber(DesignFormer, "mm", "Design former", nameof(DesignFormer)),
            Text(DesignFormerDocument)
        );
    }

    private static Length Millimetres(Entries entries, string? text, string what, string field) =>
        Length.FromMillimetres(entries.Number(text, "mm", what, field).InUnit());

    private static string? Text(string? text) =>
        string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
