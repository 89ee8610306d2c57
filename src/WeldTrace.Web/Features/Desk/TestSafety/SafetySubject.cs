using WeldTrace.Documents.CalculationSheets;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.TestSafety;
using WeldTrace.Engineering.Vessels;
using WeldTrace.Web.Components.Figures;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Desk.TestSafety;

/// <summary>What a test stores, how far people stay away, and what testing with liquid would store.</summary>
public sealed class SafetySubject : IDeskSubject
{
    private const string Diatomic = "air or nitrogen";
    private const string Monatomic = "helium or argon";
    private const double MonatomicHeatRatio = 5.0 / 3;

    /// <summary>Young's modulus and Poisson's ratio of aluminium, common values.</summary>
    private static readonly Pressure Modulus = Pressure.FromMegapascals(69_000);
    private const double Poisson = 0.33;

    /// <summary>Compressibility of water at 20 °C in 1/Pa, common value.</summary>
    private const double WaterCompressibility = 4.5e-10;

    public string Path => Routes.DeskSafety;

    public string Title => "Test safety";

    public string Purpose =>
        "Energy stored in a pressure test, as TNT, the distance that people keep, and how much less a liquid would store.";

    public IReadOnlyList<DeskGroup> Groups { get; } =
    [
        new(
            "Test",
            DeskField.Of<Volume>("volume", "Whole volume under pressure", "10") with
            {
                Called = ["volume"],
            },
            DeskField.Of<Pressure>("gauge", "Test pressure, gauge", "90") with
            {
                Called = ["absolute pressure", "test pressure", "inner pressure"],
            },
            DeskField.Of<Pressure>("air", "Air pressure", "1.01325") with
            {
                Called = ["air pressure"],
            },
            DeskField.Choice(
                "gas",
                "Gas",
                Diatomic,
                new FieldOption(Diatomic, Diatomic),
                new FieldOption(Monatomic, Monatomic)
            ),
            DeskField.Choice(
                "rule",
                "Rule for the distance",
                nameof(StandOffRule.Pcc2Of2022),
                new FieldOption(nameof(StandOffRule.Pcc2Of2022), "ASME PCC-2-2022"),
                new FieldOption(nameof(StandOffRule.Pcc2Of2008), "ASME PCC-2-2008")
            )
        ),
        new(
            "Cylinder, for the growth of the shell in a test with water",
            DeskField.Of<Length>("diameter", "Inner diameter", "160") with
            {
                Called = ["inner radius"],
            },
            DeskField.Of<Length>("wall", "Wall", "6") with
            {
                Called = ["outer radius"],
            }
        ),
    ];

    public Calculation? Calculate(DeskEntries entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        var (volume, gauge, air) = (
            entries.Quantity<Volume>("volume"),
            entries.Quantity<Pressure>("gauge"),
            entries.Quantity<Pressure>("air")
        );
        var ratio = entries.Option("gas") == Monatomic ? MonatomicHeatRatio : GasCharge.Diatomic;
        var rule = entries.Choice<StandOffRule>("rule");
        var (radius, wall) = (
            entries.Quantity<Length>("diameter") / 2,
            entries.Quantity<Length>("wall")
        );
        if (!entries.AreClean)
        {
            return null;
        }

        var isComputed =
            entries.Take(
                GasEnergy.Compute(new GasCharge(gauge + air, air, volume, ratio)),
                out var gas
            )
            & entries.Take(
                ElasticExpansion.Compute(gauge, Modulus, Poisson, radius, radius + wall, volume),
                out var growth
            );
        if (
            !isComputed
            || !entries.Take(StandOff.Compute(gas!.Isentropic, rule), out var distance)
            || !entries.Take(
                LiquidEnergy.Compute(gauge, volume, WaterCompressibility, growth!.Expansion),
                out var liquid
            )
        )
        {
            return null;
        }

        return Sheet(entries, gas, liquid, distance);
    }

    private Calculation Sheet(
        DeskEntries entries,
        GasEnergy gas,
        LiquidEnergy liquid,
        StandOff distance
    ) =>
        new()
        {
            Title = Title,
            Figures =
            [
                new("Energy stored in gas", entries.Show(gas.Isentropic, digits: 3)),
                new("As TNT", entries.Show(distance.Tnt, digits: 2)),
                new(
                    "Distance of people, at least",
                    entries.Show(distance.Least, UnitScale.Path, 2)
                ),
                new("Energy stored in water and shell", entries.Show(liquid.Total, digits: 3)),
                new(
                    "Gas over water",
                    SensibleDigits.Show(gas.Isentropic / liquid.Total, 2) + " times"
                ),
            ],
            Statements = [.. Statements(distance)],
            Tables = [Table(entries, gas, liquid)],
            Cautions = [DeskCautions.Pressure, DeskCautions.Decides],
        };

    private static IEnumerable<string> Statements(StandOff distance)
    {
        if (distance.MustBeDivided)
        {
            yield return "Above 271 MJ the rule asks to divide the system, or to justify barriers.";
        }

        yield return "The distance is for blast and, where the edition gives it, for fragments; ask the local code which edition holds. In a test with liquid vent all trapped gas first: it stores as gas does.";
    }

    private static CalculationTable Table(
        DeskEntries entries,
        GasEnergy gas,
        LiquidEnergy liquid
    ) =>
        new(
            "Stored energy",
            ["Medium and form", "Energy", "As TNT"],
            [
                Row(entries, "gas, isentropic (decides)", gas.Isentropic),
                Row(entries, "gas, Brode", gas.Brode),
                Row(entries, "gas, isothermal, upper bound", gas.Isothermal),
                Row(entries, "gas, availability", gas.Availability),
                Row(entries, "water", liquid.Liquid),
                Row(entries, "shell", liquid.Shell),
            ]
        );

    private static IReadOnlyList<string> Row(DeskEntries entries, string name, Energy energy) =>
        [name, entries.Show(energy, digits: 3), entries.Show(TntEquivalent.Of(energy), digits: 2)];
}
