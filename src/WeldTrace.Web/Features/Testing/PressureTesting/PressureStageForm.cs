using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sectioning;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Testing.PressureTesting;

/// <summary>What was typed or brought for one stage of a pressure test.</summary>
public sealed class PressureStageForm
{
    /// <summary>Number of the stage that the person saw, from 1.</summary>
    public int StageNumber { get; set; }

    public string? StartPressure { get; set; }

    public string? StartTemperature { get; set; }

    public string? EndPressure { get; set; }

    public string? EndTemperature { get; set; }

    public string? HeldSeconds { get; set; }

    public string? FastestRise { get; set; }

    public string? Dimension { get; set; }

    /// <summary>What was measured at the further places, in their order.</summary>
    // A form sent without any of them arrives as null.
    public List<string?> FurtherDimensions
    {
        get;
        set => field = [.. (value ?? []).Take(PressureSetUp.MostPlaces - 1)];
    } = [];

    public string? TotalExpansion { get; set; }

    public string? PermanentExpansion { get; set; }

    public string? ExpansionUncertainty { get; set; }

    public string? BurstPressure { get; set; }

    public string? BurstRate { get; set; }

    public BurstZone Origin { get; set; }

    public string? JointCode { get; set; }

    public string? Angle { get; set; }

    public string? Path { get; set; }

    /// <summary>Logger file of the stage, in the place of typed readings.</summary>
    public IFormFile? Log { get; set; }

    public IFormFile? Photograph { get; set; }

    public IFormFile? SecondPhotograph { get; set; }

    /// <summary>A hold as typed.</summary>
    public StageReading ReadHold(PressureStage stage, Entries entries)
    {
        ArgumentNullException.ThrowIfNull(stage);
        ArgumentNullException.ThrowIfNull(entries);
        return new StageReading(
            entries.Number(
                StartPressure,
                "bar",
                "Pressure at the start of the hold",
                nameof(StartPressure)
            ),
            entries.Number(
                StartTemperature,
                "°C",
                "Temperature at the start",
                nameof(StartTemperature)
            ),
            entries.Number(
                EndPressure,
                "bar",
                "Pressure at the end of the hold",
                nameof(EndPressure)
            ),
            entries.Number(EndTemperature, "°C", "Temperature at the end", nameof(EndTemperature)),
            entries.Whole(HeldSeconds, "seconds", "Time held", nameof(HeldSeconds)),
            null
        )
        {
            FastestRise = stage.RatePerMinute is null
                ? entries.OptionalNumber(FastestRise, "bar", Rise, nameof(FastestRise))
                : entries.Number(FastestRise, "bar", Rise, nameof(FastestRise)),
        };
    }

    /// <summary>The return to zero as typed.</summary>
    /// <param name="setUp">What was measured before.</param>
    /// <param name="entries">Takes what can't be read.</param>
    public StageReading ReadReturn(PressureSetUp setUp, Entries entries)
    {
        ArgumentNullException.ThrowIfNull(setUp);
        ArgumentNullException.ThrowIfNull(entries);
        var measured = !string.IsNullOrWhiteSpace(TotalExpansion + PermanentExpansion);
        return new StageReading(
            null,
            null,
            null,
            null,
            0,
            entries.Number(
                Dimension,
                setUp.DimensionBefore.Unit,
                "What was measured after the return to zero",
                nameof(Dimension)
            )
        )
        {
            FurtherDimensions = setUp.FurtherPlaces is { } places
                ?
                [
                    .. places.Select(
                        (p, i) =>
                            entries.Number(
                                FurtherDimensions.ElementAtOrDefault(i),
                                p.Before.Unit,
                                $"{p.Name} after the return to zero",
                                nameof(FurtherDimensions)
                            )
                    ),
                ]
                : null,
            TotalExpansion = measured
                ? entries.Number(TotalExpansion, "cm³", "Total expansion", nameof(TotalExpansion))
                : null,
            PermanentExpansion = measured
                ? entries.Number(
                    PermanentExpansion,
                    "cm³",
                    "Permanent expansion",
                    nameof(PermanentExpansion)
                )
                : null,
            ExpansionUncertainty = measured
                ? entries.Number(
                    ExpansionUncertainty,
                    "cm³",
                    "Standard uncertainty of an expansion",
                    nameof(ExpansionUncertainty)
                )
                : null,
        };
    }

    /// <summary>The burst as typed; pressure and rise come from the logger when there is one.</summary>
    public BurstReading ReadBurst(
        (Measured Pressure, Measured Rise)? logged,
        IReadOnlyList<Photograph> photographs,
        Entries entries
    )
    {
        ArgumentNullException.ThrowIfNull(entries);
        return new BurstReading(
            logged?.Pressure
                ?? entries.Number(BurstPressure, "bar", "Burst pressure", nameof(BurstPressure)),
            logged?.Rise
                ?? entries.Number(BurstRate, "bar", "Rise in the minute before", nameof(BurstRate)),
            Origin,
            string.IsNullOrWhiteSpace(JointCode) ? null : JointCode.Trim(),
            entries.OptionalNumber(Angle, "°", "Angle of the origin", nameof(Angle)),
            Path?.Trim() ?? "",
            photographs
        );
    }

    private const string Rise = "Fastest rise within a minute";
}
