namespace WeldTrace.Web.Features.Testing.ShowTest;

public sealed class SignTestForm
{
    public string? Password { get; set; }
}

public sealed class WithdrawTestForm
{
    public string? Reason { get; set; }

    public string? Password { get; set; }
}
