using WeldTrace.Domain.Preparation;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;
using WeldTrace.Domain.Welding;
using WeldTrace.TestSupport.Records;

namespace WeldTrace.Domain.Tests.Welding;

/// <summary>F8 under a procedure that allows 4 h from cleaning, a gap of 0.30 mm and a mismatch of 0.20 mm.</summary>
internal static class PreparationCauses
{
    public static IReadOnlyList<GateCause> All { get; } =
    [
        new("F8", "never cleaned", ["no cleaning on record"], () => Limited((_, f) => f)),
        new("F8", "never fitted up", ["no fit-up on record"], () => Limited((_, f) => f)),
        new(
            "F8",
            "cleaned too long ago",
            ["was cleaned 4.1 h ago, the procedure allows 4 h"],
            () => Prepared(TimeSpan.FromMinutes(246), "0.10", "0.10")
        ),
        new(
            "F8",
            "gap too wide",
            ["Gap of J1", "Fit it up again"],
            () => Prepared(TimeSpan.FromMinutes(10), "0.40", "0.10")
        ),
        new(
            "F8",
            "gap too near to its limit for the instrument",
            ["Gap of J1", "Fit it up again"],
            () => Prepared(TimeSpan.FromMinutes(10), "0.29", "0.10")
        ),
        new(
            "F8",
            "mismatch too large",
            ["Mismatch of J1", "Fit it up again"],
            () => Prepared(TimeSpan.FromMinutes(10), "0.10", "0.30")
        ),
    ];

    private static WeldGateFacts Prepared(TimeSpan ago, string gap, string mismatch) =>
        Limited(
            (shop, facts) =>
                facts with
                {
                    Preparation = new PreparationFacts(
                        [Cleaned(shop.Vessel, facts.Now - ago)],
                        [FittedUp(shop.Vessel, gap, mismatch)]
                    ),
                }
        );

    private static WeldGateFacts Limited(Func<SampleShop, WeldGateFacts, WeldGateFacts> change)
    {
        var shop = new SampleShop();
        shop.Procedure = SampleProcedures.Released(
            shop.ToolDesign,
            content: SampleProcedures.Content(shop.ToolDesign) with
            {
                Details = ProcedureDetails.None with
                {
                    CleaningLimit = new Measured("4", "h"),
                    LargestGap = new Measured("0.30", "mm"),
                    LargestMismatch = new Measured("0.20", "mm"),
                },
            }
        );
        return change(shop, shop.Facts());
    }

    private static JointCleaning Cleaned(Vessel vessel, DateTimeOffset at) =>
        Accept.Value(
            JointCleaning.Record(vessel, "J1", "acetone", true, at, SamplePeople.Operator, at)
        );

    private static JointFitUp FittedUp(Vessel vessel, string gap, string mismatch) =>
        Accept.Value(
            JointFitUp.Record(
                vessel,
                "J1",
                new Measured(gap, "mm"),
                new Measured(mismatch, "mm"),
                SampleInstruments.Caliper(),
                "CAL-7",
                "",
                SampleTime.Day,
                SamplePeople.Operator,
                SampleTime.Start
            )
        );
}
