using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Tests.Checks;
using WeldTrace.Engineering.TestSafety;
using WeldTrace.Engineering.Units;
using WeldTrace.Engineering.Vessels;

namespace WeldTrace.Engineering.Tests.TestSafety;

/// <summary>
/// Every row of e_pneumatic.csv: ASME PCC-2 and Crowl 2003 as read, a published example of a 24 inch line, integrals of p dV,
/// and two values that must not come out.
/// </summary>
public sealed class StoredEnergyChecksTests
{
    private static readonly CheckTable Table = new CheckTable("e_pneumatic.csv")
        .Number("E1", "stored energy, isentropic", row => Gas(row).Isentropic.Joules)
        .Refused(
            "E1.4",
            "stored energy, rounded exponent 0.286",
            row => GasEnergy.WithRoundedExponent(Charge(row)).IsRefused
        )
        .Number(
            "E1",
            "stored energy, rounded exponent 0.286",
            row => GasEnergy.WithRoundedExponent(Charge(row)).Value.Joules
        )
        .Number("E1", "energy, Brode", row => Gas(row).Brode.Joules)
        .Number("E1", "energy, isothermal expansion", row => Gas(row).Isothermal.Joules)
        .Number("E1", "energy, thermodynamic availability", row => Gas(row).Availability.Joules)
        .Number("E1", "TNT equivalent", row => Of2008(Gas(row).Isentropic).Tnt.Kilograms)
        .Number(
            "E1",
            "scaled distance, without factor 2",
            row => Scaled(Gas(row).Isentropic, false)
        )
        .Number("E1", "scaled distance, with factor 2", row => Scaled(Gas(row).Isentropic, true))
        .Number("E1", "minimum distance 2008 rule", row => Of2008(Gas(row).Isentropic).Blast.Metres)
        .Number(
            "E1",
            "minimum blast distance 2022 rule",
            row => Of2022(Gas(row).Isentropic).Blast.Metres
        )
        .Number(
            "E1",
            "minimum fragment distance",
            row => Of2022(Gas(row).Isentropic).Fragments!.Value.Metres
        )
        .Number("E2.1", "stored energy, published", _ => PublishedLine())
        .Number("E2", "TNT equivalent, published", row => TntEquivalent.Of(Stored(row)).Kilograms)
        .Number("E2", "distance with factor 2, published", row => Scaled(Stored(row), true))
        .Number("E2", "TNT equivalent", row => TntEquivalent.Of(Stored(row)).Kilograms)
        .Number("E2", "distance with factor 2", row => Scaled(Stored(row), true))
        .Number(
            "E3.1",
            "stored energy",
            row => FootPounds(GasEnergy.WithRoundedExponent(Imperial(row)).Value)
        )
        .Number(
            "E3.2",
            "stored energy, correct value",
            row => FootPounds(GasEnergy.Compute(Imperial(row)).Value.Isentropic)
        )
        .Number("E3.3", "PCC-2 SI constant", _ => TntEquivalent.JoulesPerKilogram)
        .Number("E3.3", "PCC-2 US constant", _ => TntEquivalent.PrintedFootPoundsPerPound)
        .Number("E3.3", "PCC-2 US constant expressed in SI", _ => PrintedConstantInSi())
        .Number(
            "E3.3",
            "other published specific energy of TNT",
            _ => TntEquivalent.OtherPublishedJoulesPerKilogram
        )
        .Number("E4", "distance with factor 2 at the tier limit", row => Scaled(Stored(row), true))
        .Number(
            "E4",
            "distance without factor 2 at the tier limit",
            row => Scaled(Stored(row), false)
        )
        .Number(
            "E4.4",
            "stored energy",
            row => TntEquivalent.EnergyAt(Length.FromMetres(row["R_m"])).Joules
        )
        .Number(
            "E5",
            "distance for the scaled consequence factor",
            row => TntEquivalent.Distance(Stored(row), row["Rscaled"]).Metres
        )
        .Number("E6.1", "energy stored in compressed water", _ => Water().Liquid.Joules)
        .Number("E6.2", "elastic energy of the shell", _ => Water().Shell.Joules)
        .Number(
            "E6.3",
            "pneumatic energy (isentropic) / hydrostatic energy (water + shell)",
            _ => GasOverWater()
        );

    public static TheoryData<int, string> Data => Table.Data;

    [Theory]
    [MemberData(nameof(Data))]
    public void StoredEnergy_CheckedRow_MatchesExpected(int index, string label)
    {
        Assert.Equal(label, Table.Rows[index].ToString());
        Table.Run(index);
    }

    private static GasCharge Charge(CheckRow row) =>
        new(
            Pressure.FromPascals(row["P_abs_Pa"]),
            Pressure.FromPascals(row["P_a_abs_Pa"]),
            Volume.FromCubicMetres(row["V_m3"]),
            row["k"]
        );

    private static GasEnergy Gas(CheckRow row) => GasEnergy.Compute(Charge(row)).Value;

    private static GasCharge Imperial(CheckRow row) =>
        new(
            Pressure.FromPoundsPerSquareInch(row["P_psia"]),
            Pressure.FromPoundsPerSquareInch(row["P_a_psia"]),
            Volume.FromCubicMetres(UnitCatalogue.Convert(row["V_ft3"], "ft3", "m3")),
            row.Or("k", 1.4)
        );

    private static double FootPounds(Energy energy) =>
        UnitCatalogue.Convert(energy.Joules, "J", "ft lbf");

    private static Energy Stored(CheckRow row) => Energy.FromJoules(row["E_J"]);

    private static double Scaled(Energy energy, bool withGroundReflection) =>
        TntEquivalent.Distance(energy, withGroundReflection: withGroundReflection).Metres;

    private static StandOff Of2008(Energy energy) =>
        StandOff.Compute(energy, StandOffRule.Pcc2Of2008).Value;

    private static StandOff Of2022(Energy energy) =>
        StandOff.Compute(energy, StandOffRule.Pcc2Of2022).Value;

    /// <summary>Bore 590.94 mm and 600 m long, as the note of the row says.</summary>
    private static double PublishedLine()
    {
        var row = Table.Rows.Single(row => row.Quantity == "stored energy, published");
        var volume = Math.PI / 4 * 0.59094 * 0.59094 * row["length_m"];
        var charge = new GasCharge(
            Pressure.FromPascals((row["P_gauge_bar"] * 1e5) + row["P_a_abs_Pa"]),
            Pressure.FromPascals(row["P_a_abs_Pa"]),
            Volume.FromCubicMetres(volume)
        );
        return GasEnergy.Compute(charge).Value.Isentropic.Joules;
    }

    private static double PrintedConstantInSi() =>
        UnitCatalogue.Convert(TntEquivalent.PrintedFootPoundsPerPound, "ft lbf", "J")
        / UnitCatalogue.Convert(1, "lb", "kg");

    private static LiquidEnergy Water()
    {
        var row = Table.Rows.Single(row => row.Id == "E6.2");
        var (pressure, volume) = (
            Pressure.FromPascals(row["p_Pa"]),
            Volume.FromCubicMetres(row["V_m3"])
        );
        var growth = ElasticExpansion
            .Compute(
                pressure,
                Pressure.FromPascals(row["E_Pa"]),
                row["nu"],
                Length.FromMetres(row["r_i_m"]),
                Length.FromMetres(row["r_o_m"]),
                volume
            )
            .Value.Expansion;
        return LiquidEnergy.Compute(pressure, volume, 4.5e-10, growth).Value;
    }

    private static double GasOverWater()
    {
        var gas = Table.Rows.First(row => row.Id == "E1.3");
        return Gas(gas).Isentropic.Joules / Water().Total.Joules;
    }
}
