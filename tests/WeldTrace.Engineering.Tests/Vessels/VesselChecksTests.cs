using WeldTrace.Engineering.Tests.Checks;

namespace WeldTrace.Engineering.Tests.Vessels;

/// <summary>
/// Every row of d_vessel.csv: second routes are the linear solve of the boundary conditions, force balances, inverse formulas and
/// integration; published values are named in the table, and the misprinted ones must not come out.
/// </summary>
public sealed class VesselChecksTests
{
    private static readonly CheckTable Table = VesselRuleChecks.AddTo(
        VesselStressChecks.AddTo(new CheckTable("d_vessel.csv"))
    );

    public static TheoryData<int, string> Data => Table.Data;

    [Theory]
    [MemberData(nameof(Data))]
    public void Vessel_CheckedRow_MatchesExpected(int index, string label)
    {
        Assert.Equal(label, Table.Rows[index].ToString());
        Table.Run(index);
    }
}
