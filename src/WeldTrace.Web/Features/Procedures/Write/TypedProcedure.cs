using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Procedures.Write;

/// <summary>Reads the numbers of a typed procedure; what is no number is told with its field.</summary>
internal static class TypedProcedure
{
    public static (ProcedureContent? Content, List<Refusal> Refusals) Read(
        WriteProcedureForm form,
        ToolDesign? tool
    )
    {
        List<Refusal> refusals = [];
        var thickness = Typed.Number(form.Thickness, "Thickness", nameof(form.Thickness), refusals);
        var debounce = Typed.Number(
            form.DebounceSeconds,
            "Shortest excursion",
            nameof(form.DebounceSeconds),
            refusals
        );
        List<ParameterWindow> windows = [];
        for (var i = 0; i < form.Windows.Count; i++)
        {
            if (!form.Windows[i].IsEmpty && Window(form.Windows[i], i, refusals) is { } window)
            {
                windows.Add(window);
            }
        }

        return thickness is null || debounce is null || refusals.Count > 0
            ? (null, refusals)
            : (
                new ProcedureContent(
                    form.Alloy?.Trim() ?? "",
                    form.Temper?.Trim() ?? "",
                    Length.FromMillimetres((double)thickness.Value),
                    form.JointType?.Trim() ?? "",
                    tool?.Id ?? Guid.Empty,
                    tool?.Label ?? "",
                    form.SpindleSense,
                    windows,
                    debounce.Value,
                    form.Notes?.Trim() ?? ""
                ),
                refusals
            );
    }

    /// <summary>Ties the domain's refusals about windows to the rows of the form.</summary>
    public static Refusal AtField(WriteProcedureForm form, Refusal refusal)
    {
        var parts = refusal.Field?.Split('.') ?? [];
        return
            parts.Length == 2
            && form.Windows.FindIndex(w => w.Parameter.ToString() == parts[0]) is >= 0 and var row
            ? refusal with
            {
                Field = FormattableString.Invariant($"Windows[{row}].{parts[1]}"),
            }
            : refusal;
    }

    private static ParameterWindow? Window(WindowForm form, int row, List<Refusal> refusals)
    {
        var name = ParameterNames.Of(form.Parameter);
        var setPoint = Number(form.SetPoint, "set point", nameof(form.SetPoint));
        var lower = Number(form.Lower, "lower limit", nameof(form.Lower));
        var upper = Number(form.Upper, "upper limit", nameof(form.Upper));
        return setPoint is null || lower is null || upper is null
            ? null
            : new ParameterWindow(
                form.Parameter,
                setPoint.Value,
                lower.Value,
                upper.Value,
                form.Unit ?? "",
                form.IsEssential
            );

        decimal? Number(string? text, string what, string field) =>
            Typed.Number(
                text,
                $"{name}, {what}",
                FormattableString.Invariant($"Windows[{row}].{field}"),
                refusals
            );
    }
}
