using System.Globalization;
using WeldTrace.Engineering.Paths;

namespace WeldTrace.Web.Components.Drawings;

/// <summary>Points and paths of a plan view: degrees clockwise from the top, radii in drawing units, y downwards.</summary>
public sealed record PlanGeometry(double CentreX, double CentreY)
{
    /// <summary>+1 for clockwise travel, -1 for counter-clockwise.</summary>
    public static int Sign(RotationSense sense) => sense == RotationSense.Clockwise ? 1 : -1;

    /// <summary>The point at this radius and angle.</summary>
    public (double X, double Y) Point(double radius, double degrees)
    {
        var angle = degrees * Math.PI / 180;
        return (CentreX + (radius * Math.Sin(angle)), CentreY - (radius * Math.Cos(angle)));
    }

    /// <summary>Path data of an arc; a sweep of a full turn or more is cut to just below one.</summary>
    public string Arc(double radius, double fromDegrees, double sweepDegrees)
    {
        var sweep = Math.Clamp(sweepDegrees, -359.99, 359.99);
        var (x1, y1) = Point(radius, fromDegrees);
        var (x2, y2) = Point(radius, fromDegrees + sweep);
        var large = Math.Abs(sweep) > 180 ? '1' : '0';
        var clockwise = sweep > 0 ? '1' : '0';
        return $"M{Number(x1)} {Number(y1)} A{Number(radius)} {Number(radius)} 0 {large} {clockwise} {Number(x2)} {Number(y2)}";
    }

    /// <summary>Path data of a straight line along a radius.</summary>
    public string Radial(double innerRadius, double outerRadius, double degrees)
    {
        var (x1, y1) = Point(innerRadius, degrees);
        var (x2, y2) = Point(outerRadius, degrees);
        return $"M{Number(x1)} {Number(y1)} L{Number(x2)} {Number(y2)}";
    }

    /// <summary>Path data of a solid arrow head on the circle, pointing along the travel.</summary>
    public string ArrowHead(double radius, double degrees, RotationSense travel, double size)
    {
        var half = size / radius * 180 / Math.PI / 2 * Sign(travel);
        var (tipX, tipY) = Point(radius, degrees + half);
        var (outX, outY) = Point(radius + (size * 0.42), degrees - half);
        var (inX, inY) = Point(radius - (size * 0.42), degrees - half);
        return $"M{Number(tipX)} {Number(tipY)} L{Number(outX)} {Number(outY)} L{Number(inX)} {Number(inY)} Z";
    }

    /// <summary>A coordinate as SVG takes it.</summary>
    public static string Number(double value) =>
        value.ToString("0.##", CultureInfo.InvariantCulture);
}
