using WeldTrace.Domain.VesselDesigns;

namespace WeldTrace.Web.Features.Testing;

/// <summary>Where the welds and angles of an unrolled vessel lie in its drawing; one line for the rest of the shell.</summary>
internal static class UnrolledPlan
{
    public const double Left = 110;
    public const double Right = 620;

    private const double Top = 36;
    private const double Step = 44;
    private const double Foot = 40;

    public static double Height(DesignContent content) =>
        Top + (Step * content.Joints.Count) + Foot;

    public static IEnumerable<(string? JointCode, string Name, double Y)> Lines(
        DesignContent content
    ) =>
        [
            .. content.Joints.Select(j => ((string?)j.Code, j.Code, Y(content, j.Code))),
            (null, "elsewhere", Y(content, null)),
        ];

    public static double X(double degrees) => Left + (degrees / 360 * (Right - Left));

    public static double Y(DesignContent content, string? jointCode)
    {
        var index = content.Joints.ToList().FindIndex(j => j.Code == jointCode);
        return Top + (Step * (index < 0 ? content.Joints.Count : index));
    }
}
