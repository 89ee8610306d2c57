using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.TestSafety;

/// <summary>
/// TNT equivalent and scaled distance. ASME PCC-2 prints 4 266 920 J/kg and 1 488 617 ft·lbf/lb; the second is 4.28 % more energy.
/// Here energies are joules first and the SI constant is used throughout.
/// </summary>
public static class TntEquivalent
{
    /// <summary>Specific energy of TNT in J/kg (ASME PCC-2-2008 equation II-3, read).</summary>
    public const double JoulesPerKilogram = 4_266_920;

    /// <summary>The constant printed for US units in ft·lbf/lb (equation II-5, read); not the same energy.</summary>
    public const double PrintedFootPoundsPerPound = 1_488_617;

    /// <summary>Another published specific energy of TNT in J/kg (university safety page, read), for comparison.</summary>
    public const double OtherPublishedJoulesPerKilogram = 4.62e6;

    /// <summary>Mass of TNT with the same energy.</summary>
    public static Mass Of(Energy energy) => Mass.FromKilograms(energy.Joules / JoulesPerKilogram);

    /// <summary>Energy of a mass of TNT.</summary>
    public static Energy EnergyOf(Mass tnt) => Energy.FromJoules(tnt.Kilograms * JoulesPerKilogram);

    /// <summary>Scaled distance R = Rs·(c·m)^(1/3), c = 1 without and 2 with reflection from the ground.</summary>
    /// <param name="energy">Stored energy, zero or more.</param>
    /// <param name="scaledMetresPerCubeRootKilogram">Rs in m/kg^(1/3); 20 for no injury.</param>
    /// <param name="withGroundReflection">Whether the mass counts twice (texts from 2018 on).</param>
    public static Length Distance(
        Energy energy,
        double scaledMetresPerCubeRootKilogram = 20,
        bool withGroundReflection = true
    ) =>
        Length.FromMetres(
            scaledMetresPerCubeRootKilogram
                * Math.Cbrt((withGroundReflection ? 2 : 1) * Of(energy).Kilograms)
        );

    /// <summary>Energy for which a distance is just enough, the reverse of <see cref="Distance"/>.</summary>
    /// <param name="distance">Distance, zero or more.</param>
    /// <param name="scaledMetresPerCubeRootKilogram">Rs in m/kg^(1/3), above zero.</param>
    /// <param name="withGroundReflection">Whether the mass counts twice.</param>
    public static Energy EnergyAt(
        Length distance,
        double scaledMetresPerCubeRootKilogram = 20,
        bool withGroundReflection = true
    )
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(scaledMetresPerCubeRootKilogram);
        var mass = Math.Pow(distance.Metres / scaledMetresPerCubeRootKilogram, 3);
        return EnergyOf(Mass.FromKilograms(mass / (withGroundReflection ? 2 : 1)));
    }
}
