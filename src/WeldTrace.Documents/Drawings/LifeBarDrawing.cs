using WeldTrace.Documents.Layout;
using WeldTrace.Documents.Tools;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Documents.Drawings;

/// <summary>The path a tool has welded as a bar against its limit.</summary>
internal sealed class LifeBarDrawing(
    ToolLife life,
    IReadOnlyList<Length> inspections,
    UnitSystem units
) : Drawing
{
    private const double Top = 20;
    private const double Thickness = 16;

    public override string AlternativeText =>
        $"Tool life: {Text(life.Used)} used of {Text(life.Limit)}, {Left()}.";

    public override double Height(double width) => 62;

    public override void Draw(Surface surface, double width)
    {
        var end = Math.Max(In(life.Limit), In(life.Used)) * 1.04;
        var axis = new ChartAxis(0, end, 1, width - 2, 10);
        var used = axis.At(In(life.Used));
        var limit = axis.At(In(life.Limit));
        var bottom = Top + Thickness;
        surface.Hatch(new Area(1, Top, Math.Max(0, used - 1), Thickness), 3, 0.5);
        surface.Polyline(
            [
                new(1, Top),
                new(axis.At(end), Top),
                new(axis.At(end), bottom),
                new(1, bottom),
                new(1, Top),
            ],
            0.4,
            Tone.Rule
        );
        surface.Line(new Spot(used, Top), new Spot(used, bottom), 1);
        surface.Line(new Spot(limit, Top - 4), new Spot(limit, bottom + 4), 2.2);
        DrawScale(surface, axis, bottom);
        DrawInspections(surface, axis, bottom);
        surface.Text($"{Text(life.Used)} used, {Left()}", new Spot(1, 7), Styles.Strong);
        var label = $"limit {Text(life.Limit)}";
        surface.Text(label, new Spot(width - 1, 7), Styles.Strong, TextAnchor.Right);
    }

    private static void DrawScale(Surface surface, ChartAxis axis, double bottom)
    {
        foreach (var (value, text) in axis.Ticks())
        {
            var x = axis.At(value);
            surface.Line(new Spot(x, bottom), new Spot(x, bottom + 3), 0.4);
            var anchor = x < 6 ? TextAnchor.Left : TextAnchor.Middle;
            surface.Text(text, new Spot(x, bottom + 19), Styles.Drawing, anchor);
        }
    }

    private void DrawInspections(Surface surface, ChartAxis axis, double bottom)
    {
        foreach (var at in inspections)
        {
            var x = axis.At(In(at));
            surface.Polygon(
                Tone.Ink,
                new Spot(x, bottom + 4),
                new Spot(x + 3, bottom + 10),
                new Spot(x - 3, bottom + 10)
            );
        }

        if (life.InspectionDueAt is { } due)
        {
            var x = axis.At(In(due));
            surface.Dashed(new Spot(x, Top), new Spot(x, bottom), 0.8, Tone.Ink, 2, 1.5);
        }
    }

    private string Left()
    {
        var over = life.Used > life.Limit;
        var rest = over ? life.Used - life.Limit : life.Limit - life.Used;
        return over ? $"{Text(rest)} past the limit" : $"{Text(rest)} left";
    }

    private string? Text(Length length) => QuantityText.Distance(length, units);

    private double In(Length length) => QuantityText.DistanceValue(length, units);
}
