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

    /// <summary>Path data of an arc, at most a full turn; in two parts above half a turn, where SVG's own arc grows inexact.</summary>
    public string Arc(double radius, double fromDegrees, double sweepDegrees)
    {
        var sweep = Math.Clamp(sweepDegrees, -360, 360);
        var (x, y) = Point(radius, fromDegrees);
        var begin = $"M{Number(x)} {Number(y)}";
        return Math.Abs(sweep) <= 180
            ? begin + Reach(radius, fromDegrees + sweep, sweep)
            : begin
                + Reach(radius, fromDegrees + (sweep / 2), sweep)
                + Reach(radius, fromDegrees + sweep, sweep);
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

    /// <summary>Path data of a regular shape with its first corner upwards, around the point at this radius and angle.</summary>
    public string Outline(double radius, double degrees, double size, int corners)
    {
        var (x, y) = Point(radius, degrees);
        var around = new PlanGeometry(x, y);
        var spots = Enumerable
            .Range(0, corners)
            .Select(i => around.Point(size, 360.0 * i / corners))
            .Select(p => $"{Number(p.X)} {Number(p.Y)}");
        return $"M{string.Join(" L", spots)} Z";
    }

    /// <summary>Path data of a small circle around the point at this radius and angle.</summary>
    public string Ring(double radius, double degrees, double size)
    {
        var (x, y) = Point(radius, degrees);
        return new PlanGeometry(x, y).Arc(size, 0, 360);
    }

    private string Reach(double radius, double toDegrees, double sweep)
    {
        var (x, y) = Point(radius, toDegrees);
        var clockwise = sweep > 0 ? '1' : '0';
        return $" A{Number(radius)} {Number(radius)} 0 0 {clockwise} {Number(x)} {Number(y)}";
    }

    /// <summary>A coordinate as SVG takes it.</summary>
    public static string Number(double value) =>
        value.ToString("0.##", CultureInfo.InvariantCulture);
}
