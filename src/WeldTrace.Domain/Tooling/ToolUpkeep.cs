using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Tooling;

/// <summary>How far a tool may wear and how often it is inspected (ISO 25239-5:2020 4.6.2; NASA-STD-5006A GWR 42).</summary>
/// <param name="LeastPinLength">Least length of the pin, in mm, with the digits as written; below the drawing's.</param>
/// <param name="LeastPinDiameter">Least diameter of the pin, in mm, with the digits as written; below the drawing's.</param>
/// <param name="InspectEvery">Length of weld between wear inspections; above zero; null when only days count.</param>
/// <param name="InspectEveryDays">Days between wear inspections; 1 or more; null when only metres count.</param>
/// <param name="InspectionProcedure">Number of the written procedure for inspections.</param>
public sealed record ToolUpkeep(
    Measured LeastPinLength,
    Measured LeastPinDiameter,
    Length? InspectEvery,
    int? InspectEveryDays,
    string InspectionProcedure
)
{
    /// <summary>Unit of the limits.</summary>
    public const string Unit = "mm";

    /// <summary>Everything that is wrong with it, for a tool of this drawing.</summary>
    public IReadOnlyList<Refusal> Check(ToolGeometry geometry)
    {
        ArgumentNullException.ThrowIfNull(geometry);
        return new Checks()
            .That(
                IsBelow(LeastPinLength, geometry.PinLength),
                "wear-limit",
                FormattableString.Invariant(
                    $"Give the least pin length in mm, above zero and below the drawing's {geometry.PinLength.Millimetres:0.###} mm."
                ),
                nameof(LeastPinLength)
            )
            .That(
                IsBelow(LeastPinDiameter, geometry.PinDiameter),
                "wear-limit",
                FormattableString.Invariant(
                    $"Give the least pin diameter in mm, above zero and below the drawing's {geometry.PinDiameter.Millimetres:0.###} mm."
                ),
                nameof(LeastPinDiameter)
            )
            .That(
                InspectEvery is not null || InspectEveryDays is not null,
                "interval",
                "Give the interval between wear inspections, in metres, in days, or both.",
                nameof(InspectEvery)
            )
            .That(
                InspectEvery is null || InspectEvery > Length.Zero,
                "interval",
                "Give the metres between wear inspections, above zero.",
                nameof(InspectEvery)
            )
            .That(
                InspectEveryDays is null or (>= 1 and <= 3660),
                "interval",
                "Give the days between wear inspections, 1 to 3660.",
                nameof(InspectEveryDays)
            )
            .Text(
                InspectionProcedure,
                ToolDesign.LongestText,
                "Give the number of the inspection procedure",
                nameof(InspectionProcedure)
            )
            .Refusals;
    }

    private static bool IsBelow(Measured limit, Length drawn) =>
        limit.Unit == Unit && limit.InUnit() > 0 && limit.InUnit() < drawn.Millimetres;
}
