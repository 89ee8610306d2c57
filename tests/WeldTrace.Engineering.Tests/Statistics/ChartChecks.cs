using WeldTrace.Engineering.Statistics;
using WeldTrace.Engineering.Tests.Checks;

namespace WeldTrace.Engineering.Tests.Statistics;

/// <summary>How the rows of control charts and outliers are computed.</summary>
internal static class ChartChecks
{
    public static CheckTable AddTo(CheckTable table) =>
        AddEwma(AddPiston(AddFlow(AddConstants(table))))
            .Number("G6.4", "first signal at sample", row => FirstSignal(row).Place)
            .Number("G6.4", "upper sum at the first signal", row => FirstSignal(row).Upper)
            .Number("G8.1", "G", row => Outlier(row).Statistic)
            .Number("G8.1", "G, published", row => Outlier(row).Statistic)
            .Number(
                "G8.1",
                "critical value one-sided 5 %, published",
                _ => Grubbs.CriticalValue(8, 0.05, isTwoSided: false)
            )
            .Number(
                "G8.2",
                "one-sided critical value",
                row => Grubbs.CriticalValue((int)row["n"], row["alpha"], isTwoSided: false)
            )
            .Number(
                "G8.2",
                "two-sided critical value",
                row => Grubbs.CriticalValue((int)row["n"], row["alpha"], isTwoSided: true)
            );

    private static CheckTable AddConstants(CheckTable table) =>
        table
            .Number("G5", "d2", row => Constants(row).D2)
            .Number("G5", "d3", row => Constants(row).D3)
            .Number("G5", "A2, printed", row => Constants(row).A2)
            .Number("G5", "A3, printed", row => Constants(row).A3)
            .Number("G5", "B4, printed", row => Constants(row).B4)
            .Number("G5", "D4, printed", row => Constants(row).UpperRangeFactor)
            .Number("G5", "E2, printed", row => Constants(row).E2);

    private static CheckTable AddFlow(CheckTable table) =>
        table
            .Number("G6.1", "centre line", row => Flow(row).Values.Centre)
            .Number("G6.1", "MR-bar", row => Flow(row).MeanRange)
            .Number(
                "G6.1",
                "UCL with d2 = 1.128",
                row => Flow(row, IndividualsChart.RoundedD2).Values.Upper
            )
            .Number(
                "G6.1",
                "LCL with d2 = 1.128",
                row => Flow(row, IndividualsChart.RoundedD2).Values.Lower
            )
            .Number("G6.1", "UCL with exact d2", row => Flow(row).Values.Upper)
            .Number("G6.1", "LCL with exact d2", row => Flow(row).Values.Lower)
            .Number("G6.1", "MR chart UCL with exact D4", row => Flow(row).Ranges.Upper)
            .Number("G6.1", "centre line, published", row => Flow(row).Values.Centre)
            .Number("G6.1", "MR-bar, published", row => Flow(row).MeanRange)
            .Number(
                "G6.1",
                "UCL, published",
                row => Flow(row, IndividualsChart.RoundedD2).Values.Upper
            )
            .Number(
                "G6.1",
                "LCL, published",
                row => Flow(row, IndividualsChart.RoundedD2).Values.Lower
            );

    private static CheckTable AddPiston(CheckTable table)
    {
        var chart = MeanRangeChart.Compute(StatisticsData.Subgroups).Value;
        var capability = Capability
            .Compute(new(73.95, 74.05), chart.Means.Centre, chart.Sigma, 125)
            .Value;
        return table
            .Number("G6.2", "X-double-bar", _ => chart.Means.Centre)
            .Number("G6.2", "R-bar", _ => chart.Ranges.Centre)
            .Number("G6.2", "X-bar UCL (exact constants)", _ => chart.Means.Upper)
            .Number("G6.2", "X-bar LCL (exact constants)", _ => chart.Means.Lower)
            .Number("G6.2", "R chart UCL (exact constants)", _ => chart.Ranges.Upper)
            .Number("G6.2", "sigma = R-bar/d2", _ => chart.Sigma)
            .Number("G6.2", "Cp for 73.95..74.05", _ => capability.Cp)
            .Number("G6.2", "Cpk for 73.95..74.05", _ => capability.Cpk)
            .Number("G6.2", "X-double-bar, published", _ => chart.Means.Centre)
            .Number("G6.2", "R-bar, published", _ => chart.Ranges.Centre)
            .Number("G6.2", "X-bar UCL, published", _ => chart.Means.Upper)
            .Number("G6.2", "X-bar LCL, published", _ => chart.Means.Lower)
            .Number("G6.2", "R chart UCL, published", _ => chart.Ranges.Upper)
            .Number("G6.2", "Cp, published", _ => capability.Cp)
            .Number("G6.2", "Cpk, published", _ => capability.Cpk);
    }

    private static CheckTable AddEwma(CheckTable table) =>
        table
            .Number("G6.3", "EWMA at t=1", row => Averages(row)[0])
            .Number("G6.3", "EWMA at t=1, published", row => Averages(row)[0])
            .Number("G6.3", "EWMA at t=14", row => Averages(row)[13])
            .Number("G6.3", "EWMA at t=14, published", row => Worked(row, 14)[0].Value)
            .Number("G6.3", "UCL", row => Ewma(row).FinalLimits.Upper)
            .Number("G6.3", "LCL", row => Ewma(row).FinalLimits.Lower)
            .Number("G6.3", "UCL, published", row => Ewma(row).FinalLimits.Upper)
            .Number("G6.3", "LCL, published", row => Ewma(row).FinalLimits.Lower)
            .Number("G6.3", "UCL at t=1 (exact variance)", row => Ewma(row).LimitsAt(1).Upper);

    private static ControlConstants Constants(CheckRow row) => ControlConstants.For((int)row["n"]);

    private static IndividualsChart Flow(CheckRow row, double? d2 = null) =>
        IndividualsChart.Compute(StatisticsData.Values(row.Text("dataset")), d2).Value;

    private static WeightedAverageChart Ewma(CheckRow row) =>
        new(row["target"], row["s"], row["lambda"], row["L"]);

    private static IReadOnlyList<double> Averages(CheckRow row) =>
        Ewma(row).Averages(StatisticsData.Values(row.Text("dataset")));

    private static IReadOnlyList<WorkingValue> Worked(CheckRow row, int count) =>
        Ewma(row).WorkingOf([.. StatisticsData.Values(row.Text("dataset")).Take(count)]).Results;

    private static CumulativeSum FirstSignal(CheckRow row) =>
        new CumulativeSumChart(row["target"], 0.3175, 4.1959)
            .Sums(StatisticsData.Values(row.Text("dataset")))
            .First(sum => sum.IsSignal);

    private static Grubbs Outlier(CheckRow row) =>
        Grubbs.Test(StatisticsData.Sample(row.Text("dataset"))).Value;
}
