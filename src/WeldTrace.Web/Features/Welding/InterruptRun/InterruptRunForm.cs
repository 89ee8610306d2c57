namespace WeldTrace.Web.Features.Welding.InterruptRun;

public sealed class InterruptRunForm
{
    /// <summary>Length travelled, in the site's unit of length.</summary>
    public string? Travelled { get; set; }

    /// <summary>What happened.</summary>
    public string? EndNote { get; set; }
}
