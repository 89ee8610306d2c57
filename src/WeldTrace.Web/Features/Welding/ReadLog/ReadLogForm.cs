namespace WeldTrace.Web.Features.Welding.ReadLog;

public sealed class ReadLogForm
{
    /// <summary>Whether the columns were mapped on this page; else the machine's remembered mapping holds.</summary>
    public bool IsNewMapping { get; set; }

    /// <summary>One per column of the file, in its order.</summary>
    // A form sent without any of them arrives as null.
    public List<ReadLogColumn> Columns
    {
        get;
        set => field = value ?? [];
    } = [];
}

public sealed class ReadLogColumn
{
    public string? Channel { get; set; }

    public string? Unit { get; set; }

    public string? Factor { get; set; }

    /// <summary>Kind of filter before judging; empty for none.</summary>
    public string? Filter { get; set; }

    /// <summary>Samples that it looks at.</summary>
    public string? FilterSamples { get; set; }
}
