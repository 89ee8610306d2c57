namespace WeldTrace.Web.Features.Findings.Contain;

public sealed class ContainForm
{
    /// <summary>Serials to hold, parted by spaces or lines.</summary>
    public string? Serials { get; set; }

    public bool HoldAll { get; set; }

    public string? Reason { get; set; }

    public string? Password { get; set; }
}
