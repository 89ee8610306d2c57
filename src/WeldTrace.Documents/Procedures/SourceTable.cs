using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.Procedures;

/// <summary>The sources of limits and formulas, each with whether it was checked.</summary>
internal static class SourceTable
{
    public static IEnumerable<Block> Blocks(IReadOnlyList<SourceNote> sources)
    {
        TableColumn[] columns = [new("Subject", 26), new("Source", 46), new("Checked", 32)];
        var rows = sources.Select(note => new TableRow([
            new Cell(note.Subject) { IsHead = true },
            note.Source,
            note.Checked is null ? Unchecked : new Cell(note.Checked),
        ]));
        return sources.Count == 0 ? [] : Part.Of("Sources", [new Table(columns, [.. rows])]);
    }

    private static Cell Unchecked => Cell.Of(new StateMark("not checked", MarkShape.Triangle));
}
