namespace WeldTrace.Web.Features.Concessions.Ask;

public sealed class AskConcessionForm
{
    public string? Machine { get; set; }

    public string? Tool { get; set; }

    /// <summary>Who would weld, where the rule is about that person.</summary>
    public Guid? Welder { get; set; }

    public string? Reason { get; set; }

    public string? Password { get; set; }
}
