using WeldTrace.Engineering.Tests.Checks;

namespace WeldTrace.Engineering.Tests.LeakTesting;

/// <summary>
/// Every row of f_leak.csv: states and inputs of 40 CFR 1065.644, conversions and bubble times as published by makers of leak
/// test equipment, the rest computed by a second route named in the table.
/// </summary>
public sealed class LeakChecksTests
{
    private static readonly CheckTable Table = LeakConversionChecks.AddTo(
        DecayChecks.AddTo(new CheckTable("f_leak.csv"))
    );

    public static TheoryData<int, string> Data => Table.Data;

    [Theory]
    [MemberData(nameof(Data))]
    public void Leak_CheckedRow_MatchesExpected(int index, string label)
    {
        Assert.Equal(label, Table.Rows[index].ToString());
        Table.Run(index);
    }

    [Fact]
    public void Readings_OfTheFit_AreThoseOfTheDataset()
    {
        var row = Table.Rows.Single(row => row.Id == "F8.1" && row.Quantity == "slope");
        var dataset = CsvLines.Read("dataset_f_decay.csv").Skip(1).ToList();
        Assert.Equal(string.Join('|', dataset.Select(line => line[1])), row.Text("p_abs_Pa"));
        Assert.Equal(string.Join('|', dataset.Select(line => line[2])), row.Text("T_K"));
    }
}
