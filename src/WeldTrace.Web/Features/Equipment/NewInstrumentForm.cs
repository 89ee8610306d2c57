using WeldTrace.Domain.Equipment;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Equipment;

public sealed class NewInstrumentForm
{
    public string? Mark { get; set; }

    public string? Kind { get; set; }

    public string? Description { get; set; }

    public string? Unit { get; set; }

    public string? Lower { get; set; } = "0";

    public string? Upper { get; set; }

    public string? Resolution { get; set; }

    public string? LargestError { get; set; }

    public string? IntervalMonths { get; set; } = "12";

    public bool IsIndicationOnly { get; set; }

    public InstrumentText Read(Entries entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        var unit = Unit?.Trim() ?? "";
        return new InstrumentText(
            Mark ?? "",
            entries.Choice<InstrumentKind>(Kind, "What it measures", nameof(Kind)),
            Description ?? "",
            entries.Number(Lower, unit, "Lower end of the range", nameof(Lower)),
            entries.Number(Upper, unit, "Upper end of the range", nameof(Upper)),
            entries.Number(Resolution, unit, "Resolution", nameof(Resolution)),
            entries.Number(LargestError, unit, "Largest permitted error", nameof(LargestError)),
            entries.Whole(IntervalMonths, "months", "Interval", nameof(IntervalMonths)),
            IsIndicationOnly
        );
    }
}
