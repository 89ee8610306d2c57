using WeldTrace.Engineering.Paths;

namespace WeldTrace.Web.Features.Welding;

public sealed class StartRunForm
{
    /// <summary>Identity of the run, made when the form was shown, so that a second press starts no second run.</summary>
    public Guid Id { get; set; }

    public string? Tool { get; set; }

    public string? Machine { get; set; }

    /// <summary>Travel sense that the operator read off the machine.</summary>
    public RotationSense? Travel { get; set; }
}
