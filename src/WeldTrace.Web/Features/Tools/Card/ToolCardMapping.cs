using System.Globalization;
using WeldTrace.Documents;
using WeldTrace.Documents.Tools;
using WeldTrace.Domain.Tooling;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Web.Components.Figures;
using WeldTrace.Web.Components.Marks;
using WeldTrace.Web.Reading;
using PrintedLife = WeldTrace.Documents.Tools.ToolLife;

namespace WeldTrace.Web.Features.Tools.Card;

/// <summary>Maps a tool and its figures to the printed card.</summary>
public static class ToolCardMapping
{
    public static ToolCardModel Map(ToolView view, DocumentStamp stamp, string address)
    {
        ArgumentNullException.ThrowIfNull(view);
        ArgumentNullException.ThrowIfNull(stamp);
        var (tool, units) = (view.Tool, stamp.Units);
        var figures = new ToolFigures(view);
        return new ToolCardModel
        {
            Stamp = stamp,
            RecordAddress = address,
            Serial = tool.Mark,
            State = PrintedMarks.Of(DomainMarks.Of(tool.State), Tool.StateWord(tool.State)),
            Design = view.Design.Label,
            Particulars = [.. Particulars(view, units)],
            Life = new PrintedLife(tool.Used, tool.LifeLimit)
            {
                InspectionDueAt = tool.Used + ToolRules.LeftToInspection(tool, view.Design),
            },
            LifeFigures = [.. LifeFigures(figures)],
            Wear = figures.WearDrawn(units),
            Failures = figures.FailuresDrawn(units),
            Uses = [.. Uses(tool)],
            Inspections = [.. (tool.Inspections ?? []).Select(Inspection)],
            Retirement = tool is { End: { } end, Retirement: { } why }
                ? new($"{ToolWords.Of(why)}: {end.Text}", end.ByName, end.At)
                : null,
        };
    }

    private static IEnumerable<LabelledValue> Particulars(ToolView view, UnitSystem units)
    {
        var geometry = view.Design.Geometry;
        yield return new("Shoulder diameter", Dimension(geometry.ShoulderDiameter, units));
        yield return new("Pin diameter", Dimension(geometry.PinDiameter, units));
        yield return new("Pin length", Dimension(geometry.PinLength, units));
        yield return new("Material", geometry.Material);
        yield return new("Evidence for the life", geometry.LifeEvidence);
        if (view.Tool is { Pin: { } pin, Shoulder: { } shoulder })
        {
            yield return new("Pin fitted", pin.Mark);
            yield return new("Shoulder fitted", shoulder.Mark);
        }

        if (view.Design.Upkeep is { } upkeep)
        {
            yield return new(
                "Wear limits",
                $"length {upkeep.LeastPinLength}, diameter {upkeep.LeastPinDiameter}"
            );
            yield return new(
                "Inspected",
                $"{ToolWords.Interval(upkeep, units)}, by {upkeep.InspectionProcedure}"
            );
        }
    }

    private static IEnumerable<LabelledValue> LifeFigures(ToolFigures figures)
    {
        foreach (var next in figures.Next)
        {
            yield return new(next.What, ToolWords.Of(next));
        }

        if (figures.Trend is { IsRefused: false } trend)
        {
            yield return new(
                "Pin wear",
                FormattableString.Invariant($"{trend.Value.MicrometresPerMetre:0.0#} µm per metre")
            );
        }

        if (!figures.Fit.IsRefused)
        {
            yield return new(
                "Life of this design",
                FormattableString.Invariant(
                    $"Weibull shape {figures.Fit.Value.Shape:0.00}, scale {figures.Fit.Value.Scale.Metres:0.0} m, from {figures.Fit.Value.Failures} of {figures.Fit.Value.Count} tools; failure: {ToolWords.Of(figures.Mode)}"
                )
            );
        }
    }

    private static IEnumerable<ToolUseLine> Uses(Tool tool)
    {
        var total = Length.Zero;
        foreach (var use in tool.Uses)
        {
            total += use.Length;
            var run =
                use.Basis == ChargeBasis.EarlierRecords
                    ? "earlier records"
                    : use.RunId.ToString("D")[^12..];
            yield return new ToolUseLine(use.At, run, use.Length)
            {
                Vessel = use.VesselSerial,
                Joint = use.JointCode,
                TotalAfter = total,
            };
        }
    }

    private static ToolInspectionLine Inspection(ToolInspection inspection) =>
        new(
            inspection.At,
            inspection.ByName,
            PrintedMarks.Of(
                inspection.IsGood ? Mark.Passed : Mark.Failed,
                inspection.IsGood ? "good" : "not good"
            )
        )
        {
            AtUse = inspection.AtUse,
            Measured = inspection.Measured is { } measured
                ?
                [
                    new("Pin length", measured.PinLength.ToString()),
                    new("Pin diameter", measured.PinDiameter.ToString()),
                    new("Instrument", measured.InstrumentMark),
                ]
                : [],
            Remark = string.Create(
                CultureInfo.InvariantCulture,
                $"{ToolInspection.Word(inspection.Kind)}. {inspection.Text}"
            ),
        };

    private static string Dimension(Length length, UnitSystem units) =>
        UnitText.Nominal(length, units).ToString();
}
