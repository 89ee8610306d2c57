using PdfSharp.UniversalAccessibility;
using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.Traveler;

/// <summary>The route as one vertical seam with a station for each step.</summary>
internal sealed class SeamLine(IReadOnlyList<RouteStation> stations, TimeZoneInfo zone) : Block
{
    public override double SpaceAfter => 8;

    public override double Height(double width) =>
        stations.Sum(station => new Station(station, zone, width).Height);

    public override double StartHeight(double width) =>
        stations.Take(2).Sum(station => new Station(station, zone, width).Height);

    public override void Draw(Canvas canvas, Area area)
    {
        var y = area.Y;
        canvas.Open(PdfBlockLevelElementTag.List);
        for (var i = 0; i < stations.Count; i++)
        {
            var station = new Station(stations[i], zone, area.Width);
            var own = area with { Y = y, Height = station.Height };
            station.Draw(canvas, own, isFirst: i == 0, isLast: i == stations.Count - 1);
            y += station.Height;
        }

        canvas.Close();
    }

    public override void Place(Flow flow)
    {
        flow.Paint(canvas => canvas.Open(PdfBlockLevelElementTag.List));
        for (var i = 0; i < stations.Count; i++)
        {
            var station = new Station(stations[i], zone, Flow.Width);
            flow.Require(station.Height);
            var area = flow.Take(station.Height);
            var (isFirst, isLast) = (i == 0, i == stations.Count - 1);
            flow.Paint(canvas => station.Draw(canvas, area, isFirst, isLast));
        }

        flow.Paint(canvas => canvas.Close());
    }
}
