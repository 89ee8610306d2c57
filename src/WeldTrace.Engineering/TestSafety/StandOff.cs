using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.TestSafety;

/// <summary>Edition of the rule for distances; the editions give different figures.</summary>
public enum StandOffRule
{
    /// <summary>ASME PCC-2-2008: tiers of 30 m and 60 m, no ground reflection (read).</summary>
    Pcc2Of2008,

    /// <summary>ASME PCC-2-2022: 30 m up to 8.13 MJ, ground reflection, fragment table (read in a copy).</summary>
    Pcc2Of2022,
}

/// <summary>
/// Least distance of people from a pneumatic test. 2008: the larger of the tier (30 m up to 135.5 MJ, 60 m up to 271 MJ) and
/// <c>20·m^(1/3)</c>; above 271 MJ divide the system. 2022: 30 m up to 8.13 MJ, else <c>20·(2m)^(1/3)</c>; fragments 30, 60, 120, 240 m for up to 8.13,
/// 27.1, 81.3 MJ and above. Local codes and licensed practice decide.
/// </summary>
public sealed record StandOff : IWorked
{
    private StandOff(Energy energy, StandOffRule rule)
    {
        (Energy, Rule) = (energy, rule);
        Tnt = TntEquivalent.Of(energy);
        Blast = Length.FromMetres(BlastMetres(energy, rule));
        Fragments =
            rule == StandOffRule.Pcc2Of2022 ? Length.FromMetres(FragmentMetres(energy)) : null;
        MustBeDivided = rule == StandOffRule.Pcc2Of2008 && !IsUpTo(energy, 271e6);
        Working = Show();
    }

    /// <summary>Stored energy.</summary>
    public Energy Energy { get; }

    /// <summary>Edition that was used; keep it with the result.</summary>
    public StandOffRule Rule { get; }

    /// <summary>TNT equivalent.</summary>
    public Mass Tnt { get; }

    /// <summary>Least distance for blast.</summary>
    public Length Blast { get; }

    /// <summary>Least distance for fragments; null where the edition has none.</summary>
    public Length? Fragments { get; }

    /// <summary>The larger of both.</summary>
    public Length Least => Fragments is { } fragments && fragments > Blast ? fragments : Blast;

    /// <summary>Whether the rule asks to divide the system or to justify barriers.</summary>
    public bool MustBeDivided { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Computes the distances.</summary>
    /// <param name="energy">Stored energy, above zero.</param>
    /// <param name="rule">Edition.</param>
    public static Computed<StandOff> Compute(Energy energy, StandOffRule rule)
    {
        var check = new InputCheck().Positive("stored energy", energy.Joules, "J");
        return check.Compute(() => new StandOff(energy, rule));
    }

    private static double BlastMetres(Energy energy, StandOffRule rule) =>
        rule switch
        {
            StandOffRule.Pcc2Of2008 => Math.Max(
                IsUpTo(energy, 135.5e6) ? 30 : 60,
                TntEquivalent.Distance(energy, withGroundReflection: false).Metres
            ),
            StandOffRule.Pcc2Of2022 => IsUpTo(energy, 8.13e6)
                ? 30
                : TntEquivalent.Distance(energy).Metres,
            _ => throw new ArgumentOutOfRangeException(nameof(rule), rule, "Unknown rule."),
        };

    private static double FragmentMetres(Energy energy) =>
        IsUpTo(energy, 8.13e6) ? 30
        : IsUpTo(energy, 27.1e6) ? 60
        : IsUpTo(energy, 81.3e6) ? 120
        : 240;

    /// <summary>The last bits of a converted number do not move an energy into the next tier.</summary>
    private static bool IsUpTo(Energy energy, double joules) =>
        energy.Joules <= joules * (1 + 1e-12);

    private Working Show()
    {
        var working = Working
            .Of(
                "Distance of people from a pneumatic test",
                Rule == StandOffRule.Pcc2Of2008
                    ? "m = E/4 266 920 J/kg; R = max(30 or 60 m, 20·m^(1/3))"
                    : "m = E/4 266 920 J/kg; R = 30 m up to 8.13 MJ, else 20·(2m)^(1/3); fragments by table"
            )
            .Input("E", "stored energy", Energy.Joules, "J")
            .Step("m", "TNT equivalent", Tnt.Kilograms, "kg")
            .Result("R", "least distance, blast", Blast.Metres, "m");
        if (Fragments is { } fragments)
        {
            working.Result("", "least distance, fragments", fragments.Metres, "m");
        }

        return working
            .From(
                Rule == StandOffRule.Pcc2Of2008
                    ? "ASME PCC-2-2008 article 5.1 (read). Local codes and licensed practice decide."
                    : "ASME PCC-2-2022 (read in a copy). Local codes and licensed practice decide."
            )
            .Validity(
                Validity.When(
                    !MustBeDivided,
                    "The energy is within the range of the rule.",
                    "divide the system or justify barriers."
                )
            )
            .Build();
    }
}
