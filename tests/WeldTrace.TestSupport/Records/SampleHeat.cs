using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Records;

namespace WeldTrace.TestSupport.Records;

public static class SampleHeat
{
    /// <summary>170 to 180 °C for 160 to 200 min, as asked for.</summary>
    public static HeatCycle Asked { get; } =
        new("WI-40", Of("170", "°C"), Of("180", "°C"), Of("160", "min"), Of("200", "min"));

    public static HeatTreatment Entered(string minutes, IReadOnlyList<TreatedPart> parts) =>
        Accept.Value(Enter("F-77", Kept("171", "178", minutes), parts));

    public static HeatRecord Kept(string lowest, string highest, string minutes) =>
        new(Of(lowest, "°C"), Of(highest, "°C"), Of(minutes, "min"), "TC-3");

    public static Outcome<HeatTreatment> Enter(
        string number,
        HeatRecord kept,
        IReadOnlyList<TreatedPart> parts,
        string? chart = "chart"
    ) =>
        HeatTreatment.Enter(
            number,
            "Furnace 2",
            SampleTime.Day,
            Asked,
            kept,
            SampleInstruments.Calibrated("TC-3", InstrumentKind.Temperature, "°C"),
            chart,
            parts,
            SampleTime.Day,
            SamplePeople.Operator,
            SampleTime.Start
        );

    private static Measured Of(string digits, string unit) => new(digits, unit);
}
