namespace WeldTrace.Web.Features.Findings.ShowFinding;

public sealed class DecideFindingForm
{
    public string? Decision { get; set; }

    public string? Reason { get; set; }

    /// <summary>Procedure to repair by; for a repair only.</summary>
    public Guid? Procedure { get; set; }

    public string? Password { get; set; }
}

public sealed class CloseFindingForm
{
    public string? Note { get; set; }

    public string? Password { get; set; }
}
