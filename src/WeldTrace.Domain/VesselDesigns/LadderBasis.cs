using WeldTrace.Domain.Records;
using WeldTrace.Engineering;
using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Vessels;

namespace WeldTrace.Domain.VesselDesigns;

/// <summary>How the least proof pressure follows from the operating pressure.</summary>
public enum LadderRule
{
    /// <summary>Proof and burst factor times the maximum expected operating pressure, corrected for temperature.</summary>
    Factors,

    /// <summary>The greater of 1.25 times the loading and 1.43 times PS.</summary>
    GreaterOf,
}

/// <summary>What proof and burst pressure of a design follow from, and how strong its wall is.</summary>
/// <param name="Rule">Rule.</param>
/// <param name="ProofFactor">Least proof pressure over the operating pressure, for <see cref="LadderRule.Factors"/>; 1 or more.</param>
/// <param name="BurstFactor">Least burst pressure over the operating pressure, corrected for temperature; above the proof factor.</param>
/// <param name="LargestAllowable">PS, maximum allowable pressure, gauge, for <see cref="LadderRule.GreaterOf"/>.</param>
/// <param name="StrengthAtTest">Strength or allowable stress at the temperature of the test; above zero.</param>
/// <param name="StrengthInService">The same at the worst temperature of service; above zero.</param>
public sealed record LadderBasis(
    LadderRule Rule,
    decimal ProofFactor,
    decimal BurstFactor,
    Pressure? LargestAllowable,
    Pressure StrengthAtTest,
    Pressure StrengthInService
)
{
    /// <summary>Strength of the wall for the prediction of the burst; null when it isn't predicted.</summary>
    public WallStrength? Wall { get; init; }

    /// <summary>Greatest permanent part of the volumetric expansion in %; null when it isn't measured.</summary>
    public decimal? PermanentExpansionPercent { get; init; }

    /// <summary>Least proof pressure, gauge, with its working.</summary>
    /// <param name="plan">Pressures of the design.</param>
    public Computed<Pressure> LeastProof(PressurePlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        if (Rule == LadderRule.GreaterOf)
        {
            return TestPressures.GreaterOf(
                LargestAllowable ?? plan.Meop,
                StrengthAtTest,
                StrengthInService
            );
        }

        var ladder = PressureLadder.Compute(
            plan.Meop,
            new LadderFactors(
                (double)ProofFactor,
                (double)BurstFactor,
                plan.FactorSource,
                StrengthAtTest / StrengthInService
            )
        );
        return ladder.TryGet(out var value)
            ? Computed.Of(value.Proof, value.Working)
            : Computed.Refused<Pressure>(ladder.Refusals);
    }

    /// <summary>Least burst pressure, gauge: burst factor and temperature correction times the operating pressure.</summary>
    /// <param name="plan">Pressures of the design.</param>
    public Pressure LeastBurst(PressurePlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return plan.Meop * ((double)BurstFactor * (StrengthAtTest / StrengthInService));
    }

    internal void Check(Checks checks, PressurePlan plan)
    {
        checks
            .That(
                StrengthAtTest > Pressure.Zero && StrengthInService > Pressure.Zero,
                "basis",
                "Give the strength at the temperature of the test and in service, both above zero; the same number twice when the temperature makes no difference.",
                nameof(PressurePlan.Basis)
            )
            .That(
                Rule != LadderRule.GreaterOf || LargestAllowable is { } ps && ps >= plan.Meop,
                "basis",
                "The rule with 1.25 and 1.43 needs PS, the maximum allowable pressure; it is not below the operating pressure.",
                nameof(PressurePlan.Basis)
            )
            .That(
                BurstFactor > 1 && (Rule == LadderRule.GreaterOf || ProofFactor is >= 1 and <= 10),
                "basis",
                "Give a proof factor of 1 to 10 and a burst factor above 1.",
                nameof(PressurePlan.Basis)
            )
            .That(
                PermanentExpansionPercent is null or (> 0 and <= 100),
                "basis",
                "Give the permanent part of the expansion above 0 and at most 100 %, or leave it empty.",
                nameof(PressurePlan.Basis)
            );
        Wall?.Check(checks);
        if (checks.AllHold)
        {
            CheckReached(checks, plan);
        }
    }

    private void CheckReached(Checks checks, PressurePlan plan)
    {
        var least = LeastProof(plan);
        if (!least.TryGet(out var proof))
        {
            checks.Add(
                least.Refusals.Select(r => new Records.Refusal(
                    "basis",
                    $"{r.Where}: {r.What} {r.Mend}",
                    nameof(PressurePlan.Basis)
                ))
            );
            return;
        }

        Reaches(
            checks,
            plan.Stages.Where(s => s.Kind == PressureStageKind.Proof).Select(plan.Target),
            proof,
            "proof"
        );
        if (plan.BurstStage is { } burst)
        {
            Reaches(checks, [plan.Target(burst)], LeastBurst(plan), "burst");
        }
    }

    private static void Reaches(
        Checks checks,
        IEnumerable<Pressure> planned,
        Pressure least,
        string what
    )
    {
        var highest = planned.DefaultIfEmpty(Pressure.Zero).Max();
        checks.That(
            Comparison
                .AtLeast(
                    new Engineering.Conformity.Measured(highest.Bar, "bar"),
                    WrittenLimit.Exact(Math.Round(least.Bar, 9), "bar")
                )
                .Verdict == Verdict.Pass,
            "ladder",
            FormattableString.Invariant(
                $"The {what} stage goes to {highest.Bar:0.###} bar; the rule asks for {least.Bar:0.###} bar at least. Raise its factor."
            ),
            nameof(PressurePlan.Stages)
        );
    }
}

/// <summary>Strength of the parent material and of the weld, for the prediction of the burst.</summary>
/// <param name="Yield">Yield strength; above zero.</param>
/// <param name="Ultimate">Ultimate strength; not below the yield strength.</param>
/// <param name="HardeningExponent">Strain-hardening exponent n; 0.001 to 0.5.</param>
/// <param name="WeldFactor">Strength of the welds that carry the hoop stress over the parent's; above 0, at most 1; 1 when none does.</param>
/// <param name="Source">Where the figures come from.</param>
public sealed record WallStrength(
    Pressure Yield,
    Pressure Ultimate,
    decimal HardeningExponent,
    decimal WeldFactor,
    string Source
)
{
    internal void Check(Checks checks) =>
        checks
            .That(
                Yield > Pressure.Zero && Ultimate >= Yield,
                "wall",
                "Give the yield strength above zero and an ultimate strength not below it.",
                nameof(PressurePlan.Basis)
            )
            .That(
                HardeningExponent is >= 0.001m and <= 0.5m && WeldFactor is > 0 and <= 1,
                "wall",
                "Give a hardening exponent of 0.001 to 0.5 and a weld factor above 0 and at most 1.",
                nameof(PressurePlan.Basis)
            )
            .Text(
                Source,
                200,
                "Say where the strength figures come from",
                nameof(PressurePlan.Basis)
            );
}
