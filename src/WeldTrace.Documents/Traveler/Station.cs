using PdfSharp.UniversalAccessibility;
using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.Traveler;

/// <summary>One step on the seam line: shape on the line, number and title, state, who and when.</summary>
internal sealed class Station
{
    private const double LineX = 9;
    private const double NumberX = 24;
    private const double TitleX = 50;
    private const double StateX = 0.50;
    private const double DoneX = 0.68;
    private const double Padding = 2.6;

    private static readonly TextStyle Text = Styles.Body;

    private readonly RouteStation _station;
    private readonly IReadOnlyList<string> _title;
    private readonly IReadOnlyList<string> _state;
    private readonly IReadOnlyList<string> _done;
    private readonly IReadOnlyList<string> _remark;

    public Station(RouteStation station, TimeZoneInfo zone, double width)
    {
        _station = station;
        _title = LineBreaker.Break(station.Title, Styles.Strong, (width * StateX) - TitleX - 8);
        _state = LineBreaker.Break(StateWords(station), Text, (width * (DoneX - StateX)) - 8);
        _done = LineBreaker.Break(Done(station, zone), Text, width * (1 - DoneX));
        _remark = string.IsNullOrWhiteSpace(station.Remark)
            ? []
            : LineBreaker.Break(station.Remark, Styles.Note, width - TitleX);
    }

    public double Height =>
        (2 * Padding)
        + (Math.Max(_title.Count, Math.Max(_state.Count, _done.Count)) * Text.Leading)
        + (_remark.Count * Styles.Note.Leading);

    public void Draw(Canvas canvas, Area area, bool isFirst, bool isLast)
    {
        canvas.Decoration(() => DrawLine(canvas, area, isFirst, isLast));
        canvas.Tagged(
            PdfBlockLevelElementTag.ListItem,
            () => canvas.Tagged(PdfBlockLevelElementTag.ListBody, () => DrawText(canvas, area))
        );
    }

    private void DrawLine(Canvas canvas, Area area, bool isFirst, bool isLast)
    {
        var x = area.X + LineX;
        var middle = area.Y + Padding + (Text.Leading / 2);
        canvas.Rule(x, isFirst ? middle : area.Y, x, isLast ? middle : area.Bottom, 1.6, Tone.Ink);
        if (_station.Point != StepPoint.None)
        {
            DrawGate(canvas, x, middle - 7.4);
        }

        canvas.Disc(x, middle, 5.6, Tone.Paper);
        Mark.Draw(canvas.Graphics, _station.State.Shape, x, middle, 4.2);
    }

    // A hold point closes the line with a heavy bar; a witness point only narrows it.
    private void DrawGate(Canvas canvas, double x, double y)
    {
        if (_station.Point == StepPoint.Hold)
        {
            canvas.Rule(x - 7, y, x + 7, y, 2, Tone.Ink);
        }
        else
        {
            canvas.Rule(x - 7, y, x - 2, y, 1.2, Tone.Ink);
            canvas.Rule(x + 2, y, x + 7, y, 1.2, Tone.Ink);
        }
    }

    private void DrawText(Canvas canvas, Area area)
    {
        var y = area.Y + Padding;
        var number = LineBreaker.Fit(_station.Number, Text, TitleX - NumberX - 4);
        canvas.Text(number, Text, area.X + NumberX, y);
        TextLines.Draw(canvas, _title, Styles.Strong, area.X + TitleX, y, struck: false);
        TextLines.Draw(canvas, _state, Text, area.X + (area.Width * StateX), y, struck: false);
        TextLines.Draw(canvas, _done, Text, area.X + (area.Width * DoneX), y, struck: false);
        var below = area.Bottom - Padding - (_remark.Count * Styles.Note.Leading);
        TextLines.Draw(canvas, _remark, Styles.Note, area.X + TitleX, below, struck: false);
    }

    private static string StateWords(RouteStation station) =>
        station.Point switch
        {
            StepPoint.Hold => $"{station.State.Word} · hold\u00A0point",
            StepPoint.Witness => $"{station.State.Word} · witness\u00A0point",
            _ => station.State.Word,
        };

    private static string? Done(RouteStation station, TimeZoneInfo zone)
    {
        var when = station.DoneAt is { } at ? SiteTime.Minute(at, zone) : null;
        return (station.DoneBy, when) switch
        {
            (null, _) => when,
            (_, null) => station.DoneBy,
            _ => $"{when} {station.DoneBy}",
        };
    }
}
