using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents;

/// <summary>The cautions that stand wherever pressure, machining or chemicals come in.</summary>
internal static class Cautions
{
    private const string Pressure =
        "Pressure testing can kill. A vessel under pressure stores energy: keep people outside the stand-off"
        + " distance, use a relief device and calibrated gauges, and never tighten, knock or move anything under"
        + " pressure. Gas stores far more energy than liquid at the same pressure.";

    private const string Machine =
        "Spindles, chips, hot welds and cleaning chemicals injure: guards closed, no gloves near a turning spindle,"
        + " eye protection, ventilation.";

    private const string WhoDecides =
        "Local codes, the design authority and licensed practice decide. This document records and computes; it"
        + " does not certify that a vessel is safe.";

    public static Block ForVessel() => Of(Pressure, Machine, WhoDecides);

    public static Block ForWelding() => Of(Machine, WhoDecides);

    private static Notice Of(params string[] paragraphs) =>
        new("Caution", paragraphs, MarkShape.Triangle);
}
