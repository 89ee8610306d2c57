using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Web.Components.Forms;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Procedures.Write;

/// <summary>Records that the details of a typed procedure name.</summary>
public sealed record NamedByDetails(
    Machine? Machine,
    IReadOnlyList<Instrument> Instruments,
    JointSketch? Sketch
)
{
    public static NamedByDetails None { get; } = new(null, [], null);
}

/// <summary>Reads the details of a typed procedure; what is no number is told with its field.</summary>
internal static class TypedDetails
{
    public static ProcedureDetails Read(
        DetailsForm form,
        NamedByDetails named,
        List<Refusal> refusals
    )
    {
        var entries = new Entries();
        var details = new ProcedureDetails
        {
            Other = Other(form, refusals),
            OuterDiameter = Millimetres(
                form.OuterDiameter,
                "Outer diameter",
                nameof(form.OuterDiameter),
                refusals
            ),
            Class = Choice<JointClass>(form.Class),
            Penetration = Choice<Penetration>(form.Penetration),
            LargestGap = entries.OptionalNumber(
                form.LargestGap,
                "mm",
                "Largest gap",
                nameof(form.LargestGap)
            ),
            LargestMismatch = entries.OptionalNumber(
                form.LargestMismatch,
                "mm",
                "Largest mismatch",
                nameof(form.LargestMismatch)
            ),
            CleaningLimit = entries.OptionalNumber(
                form.CleaningLimit,
                "h",
                "Time from cleaning to welding",
                nameof(form.CleaningLimit)
            ),
            Machine = named.Machine is { } machine ? new(machine.Id, machine.Name) : null,
            ControlMode = named.Machine?.ControlMode ?? Text(form.ControlMode),
            ToolType = Choice<ToolType>(form.ToolType),
            PostWeld = Choice<PostWeldCondition>(form.PostWeld),
            Instruments = [.. named.Instruments.Select(i => new NamedRecord(i.Id, i.Mark))],
            Sketch = named.Sketch,
            Particulars =
            [
                .. form
                    .Particulars.Where(p => !string.IsNullOrWhiteSpace(p.Text))
                    .Select(p => new Particular(p.Field, p.Text!.Trim(), p.IsEssential)),
            ],
        };
        refusals.AddRange(entries.Refusals);
        return details;
    }

    /// <summary>Ties a refusal about a field in words to its row; others to the field of the same name.</summary>
    public static string FieldOf(DetailsForm form, string field)
    {
        var word = field.Split('.')[0];
        return
            form.Particulars.FindIndex(p => p.Field.ToString() == word) is >= 0 and var row
            && field.Contains('.', StringComparison.Ordinal)
            ? FormattableString.Invariant($"Particulars[{row}].Text")
            : field;
    }

    private static OtherParent? Other(DetailsForm form, List<Refusal> refusals)
    {
        var (alloy, temper) = (Text(form.OtherAlloy), Text(form.OtherTemper));
        if (alloy is null && temper is null && string.IsNullOrWhiteSpace(form.OtherThickness))
        {
            return null;
        }

        var thickness = Typed.Number(
            form.OtherThickness,
            "Thickness of the other side",
            nameof(form.OtherThickness),
            refusals
        );
        return new OtherParent(
            alloy ?? "",
            temper ?? "",
            Length.FromMillimetres((double)(thickness ?? 1))
        );
    }

    private static Length? Millimetres(
        string? text,
        string what,
        string field,
        List<Refusal> refusals
    ) =>
        string.IsNullOrWhiteSpace(text) ? null
        : Typed.Number(text, what, field, refusals) is { } value
            ? Length.FromMillimetres((double)value)
        : null;

    private static T? Choice<T>(string? text)
        where T : struct, Enum =>
        Enum.TryParse<T>(text, out var choice) && Enum.IsDefined(choice) ? choice : null;

    private static string? Text(string? text) =>
        string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
