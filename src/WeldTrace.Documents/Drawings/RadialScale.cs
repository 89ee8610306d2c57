using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Documents.Drawings;

/// <summary>
/// Maps radii on the work to radii on paper: true to scale, or with the bands widened where they would be too
/// narrow to read.
/// </summary>
internal sealed class RadialScale
{
    private const double NarrowestBand = 24;
    private const double WidestShare = 0.62;

    private readonly double _fromMillimetres;
    private readonly double _fromPoints;
    private readonly double _pointsPerMillimetre;

    private RadialScale(double fromMillimetres, double fromPoints, double pointsPerMillimetre)
    {
        _fromMillimetres = fromMillimetres;
        _fromPoints = fromPoints;
        _pointsPerMillimetre = pointsPerMillimetre;
    }

    public bool IsEnlarged => _fromMillimetres > 0;

    public static RadialScale For(PassPlan plan, double outermostPoints)
    {
        if (plan.Tracks.Count == 0)
        {
            var radius = plan.JointLineRadius?.Millimetres ?? 1;
            return new RadialScale(0, 0, outermostPoints / radius);
        }

        var outer = plan.Tracks.Max(track => OuterEdge(track));
        var inner = Math.Max(0, plan.Tracks.Min(track => InnerEdge(track)));
        var narrowest = plan.Tracks.Min(track => track.ShoulderDiameter.Millimetres);
        var trueScale = outermostPoints / outer;
        if (narrowest * trueScale >= NarrowestBand || outer - inner <= 0)
        {
            return new RadialScale(0, 0, trueScale);
        }

        var wanted = NarrowestBand / narrowest * (outer - inner);
        var band = Math.Min(wanted, outermostPoints * WidestShare);
        return new RadialScale(inner, outermostPoints - band, band / (outer - inner));
    }

    public double Of(Length radius) =>
        Math.Max(0, _fromPoints + ((radius.Millimetres - _fromMillimetres) * _pointsPerMillimetre));

    public double Inner(PassTrack track) => Of(Length.FromMillimetres(InnerEdge(track)));

    public double Outer(PassTrack track) => Of(Length.FromMillimetres(OuterEdge(track)));

    private static double InnerEdge(PassTrack track) =>
        track.TrackRadius.Millimetres - (track.ShoulderDiameter.Millimetres / 2);

    private static double OuterEdge(PassTrack track) =>
        track.TrackRadius.Millimetres + (track.ShoulderDiameter.Millimetres / 2);
}
