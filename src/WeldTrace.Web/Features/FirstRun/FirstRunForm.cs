namespace WeldTrace.Web.Features.FirstRun;

public sealed class FirstRunForm
{
    public string? Name { get; set; }

    public string? TimeZoneId { get; set; } = "Europe/London";

    public UnitSystem Units { get; set; }

    public string? PrintedName { get; set; }

    public string? SignInName { get; set; }

    public string? Password { get; set; }

    public string? SetUpCode { get; set; }
}
