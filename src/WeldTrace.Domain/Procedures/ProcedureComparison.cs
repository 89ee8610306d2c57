namespace WeldTrace.Domain.Procedures;

/// <summary>One field of two revisions side by side.</summary>
/// <param name="Group">Group in which it stands.</param>
/// <param name="Name">The trade's word for it.</param>
/// <param name="Left">Text of the first revision; null when it lays nothing down.</param>
/// <param name="Right">Text of the second revision; null when it lays nothing down.</param>
/// <param name="IsEssential">Whether the field is essential in either revision.</param>
public sealed record ComparedLine(
    ProcedureGroup Group,
    string Name,
    string? Left,
    string? Right,
    bool IsEssential
)
{
    /// <summary>Whether the two revisions lay down different things, or differ in what is essential.</summary>
    public bool IsChanged { get; init; }
}

/// <summary>Two revisions of a procedure, compared field by field.</summary>
public static class ProcedureComparison
{
    /// <summary>Every field that at least one of the two lays down, in the order of the sheet.</summary>
    public static IReadOnlyList<ComparedLine> Of(ProcedureContent left, ProcedureContent right) =>
        Of(ProcedureLines.Of(left), ProcedureLines.Of(right));

    /// <summary>The same for the lines of two sheets, with the particulars of tool and machine where they have them.</summary>
    public static IReadOnlyList<ComparedLine> Of(
        IReadOnlyList<ProcedureLine> left,
        IReadOnlyList<ProcedureLine> right
    ) =>
        [
            .. left.Concat(right)
                .DistinctBy(l => (l.Group, l.Name))
                .OrderBy(l => l.Group)
                .Select(l => Compare(l, Same(left, l), Same(right, l))),
        ];

    private static ProcedureLine? Same(IReadOnlyList<ProcedureLine> lines, ProcedureLine wanted) =>
        lines.FirstOrDefault(l => l.Group == wanted.Group && l.Name == wanted.Name);

    private static ComparedLine Compare(
        ProcedureLine line,
        ProcedureLine? left,
        ProcedureLine? right
    ) =>
        new(
            line.Group,
            line.Name,
            left?.Text,
            right?.Text,
            (left?.IsEssential ?? false) || (right?.IsEssential ?? false)
        )
        {
            IsChanged = left != right,
        };
}
