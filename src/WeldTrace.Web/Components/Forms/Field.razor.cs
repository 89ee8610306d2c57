using Microsoft.AspNetCore.Components;

namespace WeldTrace.Web.Components.Forms;

/// <summary>A labelled control with hint, unit and error, tied together for a screen reader. Works in a plain posted form.</summary>
public partial class Field
{
    /// <summary>Posted name, such as In.Serial.</summary>
    [Parameter, EditorRequired]
    public string Name { get; set; } = "";

    [Parameter, EditorRequired]
    public string Label { get; set; } = "";

    [Parameter]
    public string? Value { get; set; }

    /// <summary>For pages with a circuit; a posted form does not need it.</summary>
    [Parameter]
    public EventCallback<string?> ValueChanged { get; set; }

    [Parameter]
    public FieldKind Kind { get; set; }

    [Parameter]
    public string? Hint { get; set; }

    /// <summary>Own error sentence; without it, the one for this name in the cascaded faults.</summary>
    [Parameter]
    public string? Error { get; set; }

    /// <summary>Unit shown after the control and read out with it.</summary>
    [Parameter]
    public string? Unit { get; set; }

    [Parameter]
    public IReadOnlyList<FieldOption> Options { get; set; } = [];

    [Parameter]
    public bool Optional { get; set; }

    [Parameter]
    public bool ReadOnly { get; set; }

    [Parameter]
    public int? MaxLength { get; set; }

    [Parameter]
    public int Rows { get; set; } = 4;

    [Parameter]
    public string? Autocomplete { get; set; }

    [Parameter(CaptureUnmatchedValues = true)]
    public IReadOnlyDictionary<string, object>? AdditionalAttributes { get; set; }

    /// <summary>Faults of the whole form, cascaded by the page.</summary>
    [CascadingParameter]
    public IReadOnlyList<FieldFault>? Faults { get; set; }

    private string Id => FieldId.For(Name);

    private string HintId => Id + "-hint";

    private string ErrorId => Id + "-error";

    private string UnitId => Id + "-unit";

    private string? ShownError => Error ?? Faults?.FirstOrDefault(f => f.Field == Name)?.Sentence;

    private string? Invalid => ShownError is null ? null : "true";

    private bool IsChecked => string.Equals(Value, "true", StringComparison.OrdinalIgnoreCase);

    private string? ShownValue => Kind is FieldKind.Password or FieldKind.File ? null : Value;

    private string? InputMode => Kind == FieldKind.Number ? "decimal" : null;

    private string? CssClass => Kind == FieldKind.Number ? "number" : null;

    private string Type =>
        Kind switch
        {
            FieldKind.Date => "date",
            FieldKind.DateTime => "datetime-local",
            FieldKind.Password => "password",
            FieldKind.File => "file",
            _ => "text",
        };

    private string? DescribedBy
    {
        get
        {
            var ids = new List<string>(3);
            if (ShownError is not null)
            {
                ids.Add(ErrorId);
            }

            if (Hint is not null)
            {
                ids.Add(HintId);
            }

            if (Unit is not null)
            {
                ids.Add(UnitId);
            }

            return ids.Count == 0 ? null : string.Join(' ', ids);
        }
    }

    private Task Changed(ChangeEventArgs change) =>
        ValueChanged.InvokeAsync(
            change.Value is bool isChecked
                ? (isChecked ? "true" : "false")
                : change.Value?.ToString()
        );
}
