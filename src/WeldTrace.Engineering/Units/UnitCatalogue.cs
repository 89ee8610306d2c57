using System.Collections.Frozen;
using System.Diagnostics.CodeAnalysis;

namespace WeldTrace.Engineering.Units;

/// <summary>
/// The units in use, with exact factors. Bases: 1 in = 25.4 mm, 1 lb = 0.45359237 kg, g = 9.80665 m/s²,
/// 1 atm = 101 325 Pa, 0 °C = 273.15 K (definitions of NIST SP 811, from memory; factors checked on several public tables).
/// </summary>
public static class UnitCatalogue
{
    private static readonly FrozenDictionary<string, Unit> BySymbol =
        UnitTable.All.ToFrozenDictionary(unit => unit.Symbol, StringComparer.Ordinal);

    private static readonly FrozenDictionary<string, string> Spellings =
        UnitTable.Spellings.ToFrozenDictionary(StringComparer.OrdinalIgnoreCase);

    /// <summary>Every unit, grouped by kind.</summary>
    public static IReadOnlyList<Unit> All => UnitTable.All;

    /// <summary>Every unit of one kind.</summary>
    public static IEnumerable<Unit> Of(Dimension dimension) =>
        All.Where(unit => unit.Dimension == dimension);

    /// <summary>Finds a unit by its symbol or a usual spelling of it (<c>degC</c>, <c>rev/min</c>, <c>Pa.m3/s</c>).</summary>
    public static bool TryFind(string? symbol, [NotNullWhen(true)] out Unit? unit)
    {
        unit = null;
        return symbol is not null
            && (
                BySymbol.TryGetValue(symbol.Trim(), out unit)
                || (
                    Spellings.TryGetValue(symbol.Trim(), out var proper)
                    && BySymbol.TryGetValue(proper, out unit)
                )
            );
    }

    /// <summary>The unit of a known symbol.</summary>
    /// <exception cref="ArgumentException">The symbol is not in the catalogue.</exception>
    public static Unit Get(string symbol) =>
        TryFind(symbol, out var unit)
            ? unit
            : throw new ArgumentException($"The unit '{symbol}' is not known.", nameof(symbol));

    /// <summary>Converts a number between two units of one kind.</summary>
    /// <exception cref="ArgumentException">A symbol is not known, or the kinds differ.</exception>
    public static double Convert(double value, string from, string to) =>
        Get(from).To(Get(to), value);
}
