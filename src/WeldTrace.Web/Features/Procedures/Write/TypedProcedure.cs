using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Procedures.Write;

/// <summary>Reads the numbers of a typed procedure; what is no number is told with its field.</summary>
public static class TypedProcedure
{
    public static (ProcedureContent? Content, List<Refusal> Refusals) Read(
        WriteProcedureForm form,
        ToolDesign? tool,
        NamedByDetails named
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
        var length = Optional(
            form.DebounceMillimetres,
            "Shortest length",
            nameof(form.DebounceMillimetres),
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

        var details = TypedDetails.Read(form.Details, named, refusals);
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
                )
                {
                    DebounceMillimetres = length,
                    Details = details,
                },
                refusals
            );
    }

    /// <summary>What can be read of a form that is still being typed; the rest is left out.</summary>
    public static ProcedureContent ReadWhatStands(WriteProcedureForm form)
    {
        List<Refusal> ignored = [];
        return new ProcedureContent(
            form.Alloy?.Trim() ?? "",
            form.Temper?.Trim() ?? "",
            Length.FromMillimetres((double)(Typed.Number(form.Thickness, "", "", ignored) ?? 0)),
            form.JointType?.Trim() ?? "",
            form.ToolDesignId,
            "",
            form.SpindleSense,
            [
                .. form
                    .Windows.Select((w, row) => w.IsEmpty ? null : Window(w.Filled(), row, ignored))
                    .OfType<ParameterWindow>()
                    .Where(w => ParameterUnits.Allows(w.Parameter, w.Unit)),
            ],
            0,
            ""
        )
        {
            Details = TypedDetails.Read(form.Details, NamedByDetails.None, ignored),
        };
    }

    /// <summary>Ties refusals about windows and details to the fields of the form.</summary>
    public static Refusal AtField(WriteProcedureForm form, Refusal refusal) =>
        refusal.Field is null ? refusal : refusal with { Field = FieldOf(form, refusal.Field) };

    private static string FieldOf(WriteProcedureForm form, string field)
    {
        var parts = field.Split('.', '[');
        var row = form.Windows.FindIndex(w => w.Parameter.ToString() == parts[0]);
        return row >= 0 && parts.Length == 2
                ? FormattableString.Invariant($"Windows[{row}].{parts[1]}")
            : typeof(WriteProcedureForm).GetProperty(parts[0]) is null
                ? $"Details.{TypedDetails.FieldOf(form.Details, field)}"
            : field;
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
            )
            {
                ControlledBy = string.IsNullOrWhiteSpace(form.ControlledBy)
                    ? null
                    : form.ControlledBy.Trim(),
                WarningLower = Optional(
                    form.WarningLower,
                    $"{name}, warn below",
                    Place(nameof(form.WarningLower)),
                    refusals
                ),
                WarningUpper = Optional(
                    form.WarningUpper,
                    $"{name}, warn above",
                    Place(nameof(form.WarningUpper)),
                    refusals
                ),
                OtherPhases = Phases(form, name, Place(nameof(form.OtherPhases)), refusals),
            };

        string Place(string field) => FormattableString.Invariant($"Windows[{row}].{field}");

        decimal? Number(string? text, string what, string field) =>
            Typed.Number(text, $"{name}, {what}", Place(field), refusals);
    }

    private static decimal? Optional(
        string? text,
        string what,
        string field,
        List<Refusal> refusals
    ) => string.IsNullOrWhiteSpace(text) ? null : Typed.Number(text, what, field, refusals);

    private static IReadOnlyList<PhaseLimits>? Phases(
        WindowForm form,
        string name,
        string field,
        List<Refusal> refusals
    )
    {
        if (string.IsNullOrWhiteSpace(form.OtherPhases))
        {
            return null;
        }

        var read = PhaseLimits.Read(form.OtherPhases);
        if (read is null)
        {
            refusals.Add(
                new(
                    "phases",
                    $"{name}: write limits in other phases like 'plunge 2 to 12; dwell 8 to 11', each of {string.Join(", ", PhaseLimits.Words)} once.",
                    field
                )
            );
        }

        return read;
    }
}
