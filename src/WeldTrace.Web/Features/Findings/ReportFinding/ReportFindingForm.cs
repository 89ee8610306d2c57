using WeldTrace.Domain.Findings;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Findings.ReportFinding;

/// <summary>What was typed to report a finding.</summary>
public sealed class ReportFindingForm
{
    public Guid Id { get; set; }

    public string? StepSequence { get; set; }

    public string? Description { get; set; }

    public string? JointCode { get; set; }

    public string? PassNumber { get; set; }

    public string? Start { get; set; }

    public string? End { get; set; }

    /// <summary>The place on the seam; null when none was given.</summary>
    public SeamPlace? ReadPlace(Entries entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        var (pass, start, end) = (
            entries.OptionalWhole(PassNumber, "passes", "Pass", nameof(PassNumber)),
            ReadAngle(Start, "Angle at which it begins", nameof(Start), entries),
            ReadAngle(End, "Angle at which it ends", nameof(End), entries)
        );
        return string.IsNullOrWhiteSpace(JointCode)
            ? null
            : new SeamPlace(JointCode.Trim(), pass, start, end);
    }

    private static Angle? ReadAngle(string? text, string what, string field, Entries entries) =>
        entries.OptionalNumber(text, "°", what, field) is { } degrees
            ? Angle.FromDegrees(degrees.InUnit())
            : null;
}
