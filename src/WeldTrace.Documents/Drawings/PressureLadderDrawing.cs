using WeldTrace.Documents.Layout;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Documents.Drawings;

/// <summary>The planned pressure over time as a line with its holds drawn heavy, and the readings as crosses.</summary>
internal sealed class PressureLadderDrawing(PressureLadderPlot plot, UnitSystem units) : Drawing
{
    private const double LeftRoom = 34;
    private const double RightRoom = 6;
    private const double TopRoom = 20;
    private const double FootRoom = 24;

    public override string AlternativeText =>
        "Pressure over time. Stages: "
        + string.Join("; ", plot.Stages.Select(InWords))
        + FormattableString.Invariant($". {plot.Readings.Count} readings.");

    public override double Height(double width) => 190;

    public override void Draw(Surface surface, double width)
    {
        var bottom = Height(width) - FootRoom;
        var time = new ChartAxis(0, LastMinute(), LeftRoom, width - LeftRoom - RightRoom, 9);
        var pressure = new ChartAxis(0, Highest() * 1.08, bottom, TopRoom - bottom, 6);
        DrawScales(surface, time, pressure, width, bottom);
        DrawLevels(surface, pressure, width);
        DrawStages(surface, time, pressure, bottom);
        foreach (var trace in plot.Traces.Where(t => t.Count > 1))
        {
            surface.Polyline(
                [
                    .. trace.Select(r => new Spot(
                        time.At(r.At.TotalMinutes),
                        pressure.At(In(r.Gauge))
                    )),
                ],
                0.7,
                Tone.Ink
            );
        }

        DrawReadings(surface, time, pressure);
    }

    private void DrawScales(
        Surface surface,
        ChartAxis time,
        ChartAxis pressure,
        double width,
        double bottom
    )
    {
        surface.Line(new Spot(LeftRoom, TopRoom), new Spot(LeftRoom, bottom), 0.5);
        surface.Line(new Spot(LeftRoom, bottom), new Spot(width - RightRoom, bottom), 0.5);
        foreach (var (value, text) in pressure.Ticks())
        {
            var y = pressure.At(value);
            surface.Line(new Spot(LeftRoom - 3, y), new Spot(LeftRoom, y), 0.4);
            surface.Text(text, new Spot(LeftRoom - 5, y), Styles.Drawing, TextAnchor.Right);
        }

        foreach (var (value, text) in time.Ticks())
        {
            var x = time.At(value);
            surface.Line(new Spot(x, bottom), new Spot(x, bottom + 3), 0.4);
            surface.Text(text, new Spot(x, bottom + 8), Styles.Drawing, TextAnchor.Middle);
        }

        surface.Text($"gauge pressure, {Unit}", new Spot(0, 5), Styles.DrawingStrong);
        var end = new Spot(width - RightRoom, bottom + 18);
        surface.Text(
            "time since the start of the test, min",
            end,
            Styles.Drawing,
            TextAnchor.Right
        );
    }

    private void DrawLevels(Surface surface, ChartAxis pressure, double width)
    {
        foreach (var level in plot.Levels)
        {
            var y = pressure.At(In(level.Gauge));
            var from = new Spot(LeftRoom, y);
            surface.Dashed(from, new Spot(width - RightRoom, y), 0.5, Tone.Quiet, 5, 3);
            var label = $"{level.Name} {QuantityText.Pressure(level.Gauge, units)}";
            var at = new Spot(width - RightRoom - 2, y - 5);
            surface.Text(label, at, Styles.Drawing, TextAnchor.Right);
        }
    }

    private void DrawStages(Surface surface, ChartAxis time, ChartAxis pressure, double bottom)
    {
        var at = new Spot(time.At(0), pressure.At(0));
        foreach (var stage in plot.Stages)
        {
            var y = pressure.At(In(stage.Target));
            var begin = at with { X = time.At(stage.Begins.TotalMinutes) };
            var reached = new Spot(time.At(stage.HoldBegins.TotalMinutes), y);
            var end = reached with { X = time.At(stage.Ends.TotalMinutes) };
            surface.Polyline([at, begin, reached], 0.8, Tone.Quiet);
            surface.Line(reached, end, 2.4, Tone.Rule);
            surface.Dashed(end, end with { Y = bottom }, 0.3, Tone.Rule, 2, 3);
            if (stage.Target.Pascals > 0)
            {
                DrawName(surface, stage, reached, end, bottom);
            }

            at = end;
        }
    }

    private static void DrawName(
        Surface surface,
        LadderStage stage,
        Spot from,
        Spot to,
        double bottom
    )
    {
        var room = to.X - from.X + 24;
        if (Styles.Drawing.Width(stage.Name) > room)
        {
            surface.Text(stage.Name, to with { Y = to.Y - 9 }, Styles.Drawing, TextAnchor.Right);
            return;
        }

        var isLow = bottom - from.Y < 14;
        var middle = new Spot((from.X + to.X) / 2, isLow ? from.Y - 9 : from.Y + 9);
        surface.Text(stage.Name, middle, Styles.Drawing, TextAnchor.Middle, Math.Max(20, room));
    }

    private void DrawReadings(Surface surface, ChartAxis time, ChartAxis pressure)
    {
        foreach (var reading in plot.Readings)
        {
            var at = new Spot(time.At(reading.At.TotalMinutes), pressure.At(In(reading.Gauge)));
            surface.Shape(MarkShape.Cross, at, 2.4);
        }
    }

    private IEnumerable<LadderReading> Read => plot.Readings.Concat(plot.Traces.SelectMany(t => t));

    private string Unit => QuantityText.PressureUnit(units);

    private double In(Pressure pressure) => QuantityText.PressureValue(pressure, units);

    private double Highest() =>
        plot
            .Stages.Select(stage => In(stage.Target))
            .Concat(Read.Select(reading => In(reading.Gauge)))
            .Concat(plot.Levels.Select(level => In(level.Gauge)))
            .DefaultIfEmpty(1)
            .Max();

    private double LastMinute() =>
        plot
            .Stages.Select(stage => stage.Ends.TotalMinutes)
            .Concat(Read.Select(reading => reading.At.TotalMinutes))
            .DefaultIfEmpty(1)
            .Max();

    private string InWords(LadderStage stage) =>
        FormattableString.Invariant(
            $"{stage.Name} at {QuantityText.Pressure(stage.Target, units)}, held {(stage.Ends - stage.HoldBegins).TotalMinutes:0.#} min"
        );
}
