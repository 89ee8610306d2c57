using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.Drawings;

/// <summary>One panel for each channel over a common time axis, with phases, windows and excursions.</summary>
internal sealed class ProcessLogDrawing(ProcessLogPlot plot) : Drawing
{
    private const double PanelHeight = 56;
    private const double PanelGap = 15;
    private const double HeadRoom = 19;
    private const double FootRoom = 22;
    private const double LabelRoom = 34;

    public override string AlternativeText =>
        plot.TimesInSeconds.Count == 0
            ? "Process log without samples."
            : FormattableString.Invariant(
                $"Process log over {Duration:0.#} s: {string.Join("; ", plot.Channels.Select(InWords))}."
            );

    private double First => plot.TimesInSeconds.Count == 0 ? 0 : plot.TimesInSeconds[0];

    private double Duration => plot.TimesInSeconds.Count == 0 ? 1 : plot.TimesInSeconds[^1] - First;

    public override double Height(double width) =>
        HeadRoom + (plot.Channels.Count * (PanelHeight + PanelGap)) + FootRoom;

    public override void Draw(Surface surface, double width)
    {
        var length = width - LabelRoom - 4;
        var time = new ChartAxis(First, First + Duration, LabelRoom, length, 10);
        var bottom = Height(width) - FootRoom;
        DrawPhases(surface, time, bottom);
        var top = HeadRoom + PanelGap;
        foreach (var channel in plot.Channels)
        {
            var panel = new Area(LabelRoom, top, length, PanelHeight);
            new ChannelPanel(surface, channel, plot.TimesInSeconds, time, panel).Draw();
            top += PanelHeight + PanelGap;
        }

        DrawTime(surface, time, bottom, width);
    }

    private void DrawPhases(Surface surface, ChartAxis time, double bottom)
    {
        for (var i = 0; i < plot.Phases.Count; i++)
        {
            var from = time.At(plot.Phases[i].From.TotalSeconds);
            var width = time.At(plot.Phases[i].To.TotalSeconds) - from;
            if (i % 2 == 0 && width > 0)
            {
                surface.Rectangle(from, HeadRoom, width, bottom - HeadRoom, Tone.Tint);
            }

            surface.Line(new Spot(from, 1), new Spot(from, bottom), 0.35, Tone.Rule);
        }

        foreach (var phase in plot.Phases)
        {
            var from = time.At(phase.From.TotalSeconds);
            DrawPhaseName(surface, phase.Name, from, time.At(phase.To.TotalSeconds) - from);
        }
    }

    // The name of a short phase stands one row lower, over the line of the next phase.
    private static void DrawPhaseName(Surface surface, string name, double from, double width)
    {
        var own = Styles.Drawing.Width(name);
        var fits = own < width - 3;
        if (!fits)
        {
            surface.Rectangle(from + 1, 10, own + 2, 8, Tone.Paper);
        }

        surface.Text(name, new Spot(from + 2, fits ? 5 : 14), Styles.Drawing);
    }

    private static void DrawTime(Surface surface, ChartAxis time, double bottom, double width)
    {
        foreach (var (value, text) in time.Ticks())
        {
            var x = time.At(value);
            surface.Line(new Spot(x, bottom), new Spot(x, bottom + 3), 0.4);
            surface.Text(text, new Spot(x, bottom + 8), Styles.Drawing, TextAnchor.Middle);
        }

        var end = new Spot(width - 4, bottom + 17);
        surface.Text("time since the start of the log, s", end, Styles.Drawing, TextAnchor.Right);
    }

    private static string InWords(LogChannel channel) =>
        channel.Excursions.Count switch
        {
            0 => $"{channel.Name}, no excursion",
            1 => $"{channel.Name}, 1 excursion",
            var count => FormattableString.Invariant($"{channel.Name}, {count} excursions"),
        };
}
