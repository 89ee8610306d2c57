namespace WeldTrace.Web.Features.Desk;

/// <summary>The usual cautions of the desk pages, on screen and on paper.</summary>
public static class DeskCautions
{
    public const string Decides =
        "A computation, not a permit: local codes, the design authority and licensed practice decide.";

    public const string Pressure =
        "Pressure testing can kill. Keep everyone outside the stand-off or behind the barrier that the local code and the design authority ask for; use a relief device; never tighten, knock or move anything under pressure. Gas stores far more energy than liquid.";

    public const string Spindle =
        "Spindles, chips and hot welds injure: guards closed, no gloves near a turning spindle, eye protection.";

    public const string TestWelds =
        "These are estimates for planning; test welds and their sections decide.";
}
