using WeldTrace.Engineering.Tests.Joints;
using WeldTrace.Engineering.Tests.LeakTesting;
using WeldTrace.Engineering.Tests.Paths;
using WeldTrace.Engineering.Tests.Process;
using WeldTrace.Engineering.Tests.Signals;
using WeldTrace.Engineering.Tests.Statistics;
using WeldTrace.Engineering.Tests.TestSafety;
using WeldTrace.Engineering.Tests.ToolLife;
using WeldTrace.Engineering.Tests.Units;
using WeldTrace.Engineering.Tests.Vessels;

namespace WeldTrace.Engineering.Tests.Checks;

/// <summary>No row of a table of checked values is dropped: tests are counted against the lines of the file and its known length.</summary>
public sealed class EveryRowTests
{
    private static readonly Dictionary<string, (int Rows, int Tests)> Tables = new()
    {
        ["a_process.csv"] = (67, ProcessChecksTests.Data.Count),
        ["b_path.csv"] = (57, PathChecksTests.Data.Count),
        ["c_tool_life.csv"] = (135, ToolLifeChecksTests.Data.Count),
        ["d_vessel.csv"] = (134, VesselChecksTests.Data.Count),
        ["e_pneumatic.csv"] = (56, StoredEnergyChecksTests.Data.Count),
        ["f_leak.csv"] = (81, LeakChecksTests.Data.Count),
        ["g_statistics.csv"] = (110, StatisticsChecksTests.Data.Count),
        ["h_process_log.csv"] = (74, ProcessLogChecksTests.Data.Count),
        ["i_joint.csv"] = (24, JointChecksTests.Data.Count),
        ["j_units.csv"] = (49, UnitChecksTests.Data.Count),
        ["g_k_factors.csv"] = (34, StatisticsTablesTests.KRows.Count),
        ["g_control_constants.csv"] = (24, StatisticsTablesTests.ConstantRows.Count),
        ["g_grubbs.csv"] = (28, StatisticsTablesTests.GrubbsRows.Count),
        ["g_nonparametric_ranks.csv"] = (16, StatisticsTablesTests.RankRows.Count),
    };

    public static TheoryData<string> Files => [.. Tables.Keys];

    [Theory]
    [MemberData(nameof(Files))]
    public void Table_EveryRow_IsATest(string file)
    {
        var (rows, tests) = Tables[file];
        var lines = File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Checks", file))
            .Count(line => line.Trim().Length > 0 && line[0] != '#');
        Assert.Equal(rows, lines - 1);
        Assert.Equal(rows, tests);
    }

    [Fact]
    public void Tables_OfTheFolder_AreAllCounted() =>
        Assert.Equal(
            Tables.Keys.Order(),
            Directory
                .EnumerateFiles(Path.Combine(AppContext.BaseDirectory, "Checks"), "*.csv")
                .Select(path => Path.GetFileName(path))
                .Where(name => !name.StartsWith("dataset_", StringComparison.Ordinal))
                .Order()
        );
}
