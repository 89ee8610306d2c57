using WeldTrace.Domain.Limits;

namespace WeldTrace.Web.Features.Limits.Enter;

/// <summary>A table as typed.</summary>
public sealed class EnterLimitsForm
{
    private const int SpareRows = 5;

    public LimitKind Kind { get; set; }

    public string? Code { get; set; }

    public string? Title { get; set; }

    public string? Document { get; set; }

    public string? Edition { get; set; }

    public string? Clause { get; set; }

    public string? Reason { get; set; }

    // A form sent without any of them arrives as null.
    public List<LimitRowForm> Rows
    {
        get;
        set => field = value ?? [];
    } = [];

    public string? Password { get; set; }

    /// <summary>Gives each row all its cells, and adds empty rows at the end.</summary>
    public void FillRows()
    {
        var columns = LimitSchema.Of(Kind).Count;
        Rows = [.. Rows.Where(r => !r.IsEmpty)];
        Rows.AddRange(Enumerable.Range(0, SpareRows).Select(_ => new LimitRowForm()));
        foreach (var row in Rows)
        {
            row.Cells.AddRange(
                Enumerable.Repeat<string?>(null, Math.Max(0, columns - row.Cells.Count))
            );
        }
    }

    public static EnterLimitsForm Of(LimitTable table)
    {
        ArgumentNullException.ThrowIfNull(table);
        return new EnterLimitsForm
        {
            Kind = table.Covers,
            Code = table.Code,
            Title = table.Text.Title,
            Document = table.Text.Source.Document,
            Edition = table.Text.Source.Edition,
            Clause = table.Text.Source.Clause,
            Rows = [.. table.Text.Rows.Select(r => new LimitRowForm { Cells = [.. r] })],
        };
    }

    /// <summary>What was typed; empty rows are left out.</summary>
    public LimitText Read()
    {
        Rows = [.. Rows.Where(r => !r.IsEmpty)];
        return new LimitText(
            Title?.Trim() ?? "",
            new LimitSource(Document?.Trim() ?? "", Edition?.Trim() ?? "", Clause?.Trim() ?? ""),
            [.. Rows.Select(r => (IReadOnlyList<string>)[.. r.Cells.Select(c => c?.Trim() ?? "")])]
        );
    }
}

/// <summary>A row as typed.</summary>
public sealed class LimitRowForm
{
    // A row sent without any of them arrives as null, and one sent by hand may have too few.
    public List<string?> Cells
    {
        get;
        set => field = value ?? [];
    } = [];

    public bool IsEmpty => Cells.All(string.IsNullOrWhiteSpace);
}
