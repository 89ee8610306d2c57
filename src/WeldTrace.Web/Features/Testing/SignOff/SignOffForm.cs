namespace WeldTrace.Web.Features.Testing.SignOff;

public sealed class SignOffForm
{
    public Guid Id { get; set; }

    public string? Remark { get; set; }

    public string? Password { get; set; }
}
