using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Tooling;

/// <summary>The pin of a tool in service as it was last measured.</summary>
/// <param name="ToolMark">Mark of the tool.</param>
/// <param name="On">Day of the measurement.</param>
/// <param name="Length">Length of the pin, above zero.</param>
public sealed record MeasuredPin(string ToolMark, DateOnly On, Length Length)
{
    /// <summary>The latest measurement among tools; null when none in service was measured.</summary>
    public static MeasuredPin? Latest(IEnumerable<Tool> tools) =>
        tools
            .Where(t => t.State == ToolState.InService)
            .Select(t => (t.Mark, Inspection: t.LatestMeasured))
            .Where(t => t.Inspection is not null)
            .OrderByDescending(t => t.Inspection!.At)
            .Select(t => new MeasuredPin(
                t.Mark,
                t.Inspection!.On,
                Length.FromMillimetres(t.Inspection.Measured!.PinLength.InUnit())
            ))
            .FirstOrDefault();
}
