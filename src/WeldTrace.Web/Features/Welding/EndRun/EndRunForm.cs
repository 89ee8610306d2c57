namespace WeldTrace.Web.Features.Welding.EndRun;

public sealed class EndRunForm
{
    public string? EndNote { get; set; }
}
