using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering;
using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.PressureTesting;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Testing;

/// <summary>Judges the burst of a sample against the burst factor of the design.</summary>
internal static class BurstEvaluation
{
    public static void Check(Checks checks, StageReading reading, DesignContent design)
    {
        checks.That(
            reading.Burst is not null,
            "burst",
            "Enter the pressure at which the vessel burst, its origin and its path.",
            nameof(reading.Burst)
        );
        reading.Burst?.Check(checks, design);
    }

    public static (Verdict, string, Working) Judge(
        VesselDesigns.PressureStage stage,
        StageReading reading,
        PressureSetUp setUp,
        PressurePlan plan
    )
    {
        var burst = reading.Burst!;
        var factor = plan.Basis is { } basis
            ? basis.LeastBurst(plan) / plan.Meop
            : (double)stage.FactorOnMeop;
        var ratio = BurstRatio
            .Evaluate(
                Pressure.FromBar(burst.Pressure.InUnit()),
                Pressure.FromBar(setUp.GaugeUncertainty.InUnit()),
                plan.Meop,
                WrittenLimit.Exact(Math.Round(factor, 9), "")
            )
            .Value;
        return (
            ratio.Judgement.Verdict,
            FormattableString.Invariant(
                $"Burst at {burst.Pressure}, {ratio.Ratio:0.000} times the operating pressure: {ratio.Judgement.Sentence}"
            ),
            ratio.Working
        );
    }
}

/// <summary>Judges the permanent part of the volumetric expansion, where it was measured.</summary>
internal static class ExpansionEvaluation
{
    public static void Check(Checks checks, StageReading reading)
    {
        if (reading is { TotalExpansion: null, PermanentExpansion: null })
        {
            return;
        }

        Reading.Between(
            checks,
            reading.TotalExpansion,
            0.001,
            1e6,
            "Total expansion",
            nameof(reading.TotalExpansion)
        );
        Reading.Between(
            checks,
            reading.PermanentExpansion,
            0,
            reading.TotalExpansion?.InUnit() ?? 1e6,
            "Permanent expansion",
            nameof(reading.PermanentExpansion)
        );
        Reading.Between(
            checks,
            reading.ExpansionUncertainty,
            0,
            1e5,
            "Standard uncertainty of an expansion",
            nameof(reading.ExpansionUncertainty)
        );
    }

    /// <summary>Judges the permanent part; null when it wasn't measured or the design sets no limit for it.</summary>
    public static (Verdict, string, Working)? Judge(StageReading reading, PressurePlan plan)
    {
        if (
            reading.TotalExpansion is null
            || plan.Basis?.PermanentExpansionPercent is not { } limit
        )
        {
            return null;
        }

        var (total, permanent, u) = (
            reading.TotalExpansion.InUnit(),
            reading.PermanentExpansion!.InUnit(),
            reading.ExpansionUncertainty!.InUnit()
        );
        // Ratio of two readings of the same burette: first-order propagation, coverage factor 2.
        var percent = 200 * u / total * Math.Sqrt(1 + (permanent / total * (permanent / total)));
        var expansion = VolumetricExpansion
            .Evaluate(
                Volume.FromCubicCentimetres(total),
                Volume.FromCubicCentimetres(permanent),
                percent,
                WrittenLimit.Exact((double)limit, "%")
            )
            .Value;
        return (
            expansion.Judgement.Verdict,
            $"Permanent part of the expansion: {expansion.Judgement.Sentence}",
            expansion.Working
        );
    }
}
