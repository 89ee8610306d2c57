using System.Globalization;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Tests.Checks;
using WeldTrace.Engineering.ToolLife;

namespace WeldTrace.Engineering.Tests.ToolLife;

/// <summary>Published life data; hours, kilometres and miles stand for metres here.</summary>
internal static class LifeData
{
    private static readonly Dictionary<string, LifeRecord[]> Sets = CsvLines
        .Read("dataset_c_weibull.csv")
        .Skip(1)
        .GroupBy(line => line[0])
        .ToDictionary(group => group.Key, group => group.Select(Record).ToArray());

    private static readonly Dictionary<string, ToolLifeFit> Fits = Sets.ToDictionary(
        set => set.Key,
        set => ToolLifeFit.Fit(set.Value).Value
    );

    public static LifeRecord[] Records(string dataset) => Sets[dataset];

    public static ToolLifeFit Fit(string dataset) => Fits[dataset];

    private static LifeRecord Record(IReadOnlyList<string> line) =>
        new(Length.FromMetres(double.Parse(line[1], CultureInfo.InvariantCulture)), line[2] == "1");
}
