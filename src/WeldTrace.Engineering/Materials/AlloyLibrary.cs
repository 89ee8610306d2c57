using WeldTrace.Engineering.Quantities;
using static WeldTrace.Engineering.Materials.Evidence;

namespace WeldTrace.Engineering.Materials;

/// <summary>
/// Melting ranges and strengths of aluminium alloys in use, each with its source. For comparison and plausibility, not for
/// acceptance: that takes the certificate of the cast and the material standard.
/// </summary>
public static class AlloyLibrary
{
    private const string Maker = "aluminium maker's basic-data table";
    private const string Supplier = "tube supplier's physical-property table";
    private const string General = "general knowledge";
    private const string Rule3Al = "49 CFR 178.46 table 2";
    private const string Sheet2219 = "typical property sheet for 2219-T87";
    private const string Range2219 =
        "property tables, 116 to 170 by temper; the value for T87 taken";
    private const string Sheet7075 = "metal supplier's page, approximately";

    /// <summary>All alloys known here, by designation; tempered entries carry strengths.</summary>
    public static IReadOnlyList<Alloy> All { get; } =
    [
        Melting("2014", 507, Read, Maker, 638, Read, Maker),
        Melting("2017", 513, Read, Maker, 640, Read, Maker),
        Melting("2024", 502, Read, Supplier, 638, Read, Supplier),
        new("2195"),
        Melting("2219", 543, Read, "encyclopaedia", 643, FromMemory, General),
        Melting("2219-T87", 543, Read, "encyclopaedia", 643, FromMemory, General) with
        {
            TypicalUltimate = Strength(476, Sheet2219),
            TypicalYield = Strength(393, Sheet2219),
            Thermal = new(
                new(120, "W/(m·K)", Read, Range2219),
                new(2840, "kg/m³", Read, Sheet2219),
                new(864, "J/(kg·K)", Read, Sheet2219)
            ),
        },
        Melting("2618", 549, Read, Maker, 638, Read, Maker),
        Melting("5083", 574, Read, Maker, 638, Read, Maker),
        Melting("6061", 582, Read, Maker, 652, Read, Supplier),
        Melting("6061-T6", 582, Read, Maker, 652, Read, Supplier) with
        {
            MinimumUltimate = new(Pressure.FromPoundsPerSquareInch(38000), Read, Rule3Al),
            MinimumYield = new(Pressure.FromPoundsPerSquareInch(35000), Read, Rule3Al),
            Thermal = new(
                new(167, "W/(m·K)", Read, Supplier),
                new(2700, "kg/m³", Read, Maker),
                new(896, "J/(kg·K)", FromMemory, General)
            ),
        },
        Melting("6063", 615, Read, Maker, 655, Read, Maker),
        Melting("6082", 575, FromMemory, General, 650, FromMemory, General),
        Melting("7003", 620, Read, Maker, 650, Read, Maker),
        Melting("7020", 604, FromMemory, General, 645, FromMemory, General),
        Melting("7050", 524, Read, Maker, 635, Read, Maker),
        Melting("7075", 477, FromMemory, General, 635, FromMemory, General),
        Melting("7075-T6", 477, FromMemory, General, 635, FromMemory, General) with
        {
            TypicalUltimate = Strength(570, Sheet7075),
        },
    ];

    /// <summary>
    /// The alloy of a designation with or without temper; a temper that is not listed falls back to the bare alloy. Null when it is not known.
    /// </summary>
    public static Alloy? Find(string? designation)
    {
        var text = (designation ?? "").Trim();
        return Exact(text) ?? Exact(text.Split('-')[0]);
    }

    private static Alloy? Exact(string designation) =>
        All.FirstOrDefault(alloy =>
            alloy.Designation.Equals(designation, StringComparison.OrdinalIgnoreCase)
        );

    private static Alloy Melting(
        string designation,
        double solidus,
        Evidence solidusEvidence,
        string solidusSource,
        double liquidus,
        Evidence liquidusEvidence,
        string liquidusSource
    ) =>
        new(
            designation,
            new(Temperature.FromDegreesCelsius(solidus), solidusEvidence, solidusSource),
            new(Temperature.FromDegreesCelsius(liquidus), liquidusEvidence, liquidusSource)
        );

    private static Sourced<Pressure> Strength(double megapascals, string source) =>
        new(Pressure.FromMegapascals(megapascals), Read, source);
}
