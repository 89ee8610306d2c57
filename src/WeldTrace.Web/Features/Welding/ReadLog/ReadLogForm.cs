namespace WeldTrace.Web.Features.Welding.ReadLog;

public sealed class ReadLogForm
{
    /// <summary>Whether the columns were mapped on this page; else the machine's remembered mapping holds.</summary>
    public bool IsNewMapping { get; set; }

    /// <summary>One per column of the file, in its order.</summary>
    public List<ReadLogColumn> Columns { get; set; } = [];
}

public sealed class ReadLogColumn
{
    public string? Channel { get; set; }

    public string? Unit { get; set; }

    public string? Factor { get; set; }
}
