using WeldTrace.Engineering.Statistics;
using WeldTrace.Engineering.Tests.Checks;

namespace WeldTrace.Engineering.Tests.Statistics;

/// <summary>Every row of the tables of tolerance factors, chart constants, Grubbs values and ranks.</summary>
public sealed class StatisticsTablesTests
{
    public static TheoryData<int> KRows => Rows("g_k_factors.csv");

    public static TheoryData<int> ConstantRows => Rows("g_control_constants.csv");

    public static TheoryData<int> GrubbsRows => Rows("g_grubbs.csv");

    public static TheoryData<int> RankRows => Rows("g_nonparametric_ranks.csv");

    [Theory]
    [MemberData(nameof(KRows))]
    public void ToleranceFactor_TableRow_Matches(int index)
    {
        var row = Row("g_k_factors.csv", index);
        var count = (int)row[0];
        var pairs = new[] { (0.90, 0.95), (0.99, 0.95), (0.90, 0.90), (0.95, 0.95), (0.99, 0.99) };
        for (var i = 0; i < pairs.Length; i++)
        {
            var factor = ToleranceFactor.OneSided(count, pairs[i].Item1, pairs[i].Item2);
            Assert.InRange(factor / row[i + 1], 1 - 1e-6, 1 + 1e-6);
        }

        AssertPrinted(row, 6, ToleranceFactor.OneSided(count, 0.90, 0.95), 0.003);
        AssertPrinted(row, 7, ToleranceFactor.OneSided(count, 0.99, 0.95), 0.003);
    }

    [Theory]
    [MemberData(nameof(ConstantRows))]
    public void ControlConstants_TableRow_Matches(int index)
    {
        var row = Row("g_control_constants.csv", index);
        var constants = ControlConstants.For((int)row[0]);
        double[] actual =
        [
            constants.D2,
            constants.D3,
            constants.C4,
            constants.A2,
            constants.A3,
            constants.B3,
            constants.B4,
            constants.LowerRangeFactor,
            constants.UpperRangeFactor,
            constants.E2,
        ];
        Assert.All(actual, (value, i) => Assert.Equal(row[i + 1], value, 1e-5));
    }

    [Theory]
    [MemberData(nameof(GrubbsRows))]
    public void Grubbs_TableRow_Matches(int index)
    {
        var row = Row("g_grubbs.csv", index);
        Assert.Equal(row[1], Grubbs.CriticalValue((int)row[0], 0.05, isTwoSided: false), 1e-6);
        Assert.Equal(row[2], Grubbs.CriticalValue((int)row[0], 0.05, isTwoSided: true), 1e-6);
        AssertPrinted(row, 3, row[2], 0.0011);
    }

    [Theory]
    [MemberData(nameof(RankRows))]
    public void SmallestSample_TableRow_Matches(int index)
    {
        var row = Row("g_nonparametric_ranks.csv", index);
        Assert.Equal((int)row[3], BasisValue.SmallestSample(row[0], (int)row[1]));
    }

    private static void AssertPrinted(double[] row, int column, double value, double tolerance)
    {
        if (!double.IsNaN(row[column]))
        {
            Assert.Equal(row[column], value, tolerance);
        }
    }

    private static double[] Row(string file, int index) =>
        [
            .. CsvLines
                .Read(file)
                .Skip(1)
                .ElementAt(index)
                .Select(text =>
                    double.TryParse(
                        text,
                        System.Globalization.CultureInfo.InvariantCulture,
                        out var number
                    )
                        ? number
                        : double.NaN
                ),
        ];

    private static TheoryData<int> Rows(string file) =>
        [.. Enumerable.Range(0, CsvLines.Read(file).Count() - 1)];
}
