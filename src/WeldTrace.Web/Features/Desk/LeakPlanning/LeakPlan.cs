using WeldTrace.Engineering.LeakTesting;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Units;

namespace WeldTrace.Web.Features.Desk.LeakPlanning;

/// <summary>A leak test that is planned, as it was entered.</summary>
internal sealed record LeakPlan(
    LeakRate Wanted,
    Unit Unit,
    Volume Volume,
    Pressure Absolute,
    Pressure Air,
    Temperature Gas,
    TimeSpan Hold,
    DecayUncertainty Uncertainty,
    TestGas TestGas,
    LeakCondition InService
)
{
    public LeakCondition InTest => new(TestGas, Absolute, Air);

    public static LeakPlan Read(DeskEntries entries)
    {
        var unit = UnitCatalogue.Get(entries.Option("rateunit"));
        var air = entries.Quantity<Pressure>("air");
        return new LeakPlan(
            LeakRate.FromSi(unit.ToSi(entries.Number("rate"))),
            unit,
            entries.Quantity<Volume>("volume"),
            entries.Quantity<Pressure>("gauge") + air,
            air,
            entries.Quantity<Temperature>("temperature"),
            entries.Time("hold", 60),
            new DecayUncertainty(
                Volume.Zero,
                entries.Quantity<Pressure>("upressure"),
                entries.Number("ukelvin"),
                TimeSpan.Zero
            ),
            Named(entries, "gas"),
            new LeakCondition(
                Named(entries, "servicegas"),
                entries.Quantity<Pressure>("serviceinside"),
                entries.Quantity<Pressure>("serviceoutside")
            )
        );
    }

    private static TestGas Named(DeskEntries entries, string name)
    {
        var gas = entries.Option(name);
        return TestGas.All.First(g => g.Name == gas);
    }
}
