using System.Globalization;
using WeldTrace.Engineering.Statistics;
using WeldTrace.Engineering.Tests.Checks;

namespace WeldTrace.Engineering.Tests.Statistics;

/// <summary>Published data sets in order of observation.</summary>
internal static class StatisticsData
{
    private static readonly Dictionary<string, double[]> Sets = CsvLines
        .Read("dataset_g_univariate.csv")
        .Skip(1)
        .GroupBy(line => line[0])
        .ToDictionary(group => group.Key, group => group.Select(line => Number(line[2])).ToArray());

    public static IReadOnlyList<IReadOnlyList<double>> Subgroups { get; } =
    [
        .. CsvLines
            .Read("dataset_g_subgroups.csv")
            .Skip(1)
            .Select(line => line.Skip(2).Select(Number).ToArray()),
    ];

    public static double[] Values(string dataset) => Sets[dataset];

    public static Sample Sample(string dataset) => Engineering.Statistics.Sample.Of(Sets[dataset]);

    public static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
