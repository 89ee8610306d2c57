namespace WeldTrace.Web.Features.Welding.SignRun;

public sealed class SignRunForm
{
    public string? Password { get; set; }
}
