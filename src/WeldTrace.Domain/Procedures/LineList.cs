using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Procedures;

internal sealed class LineList(ProcedureContent content)
{
    private readonly List<ProcedureLine> _lines = [];

    public IReadOnlyList<ProcedureLine> Lines => _lines;

    public static string? Millimetres(Length? length) =>
        length is { } value ? FormattableString.Invariant($"{value.Millimetres:0.###} mm") : null;

    public void Add(ProcedureGroup group, string name, string? text, bool isEssential)
    {
        if (!string.IsNullOrWhiteSpace(text))
        {
            _lines.Add(new ProcedureLine(group, name, text, isEssential));
        }
    }

    /// <summary>The fields of a group that are written in words.</summary>
    public void AddWords(ProcedureGroup group)
    {
        foreach (var field in ProcedureFields.In(group))
        {
            var words = content.DetailsOrNone.Of(field);
            Add(group, ProcedureFields.Name(field), words?.Text, words?.IsEssential ?? false);
        }
    }
}
