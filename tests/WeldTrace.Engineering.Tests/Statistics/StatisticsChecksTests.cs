using WeldTrace.Engineering.Statistics;
using WeldTrace.Engineering.Tests.Checks;

namespace WeldTrace.Engineering.Tests.Statistics;

/// <summary>
/// Every row of g_statistics.csv: NIST/SEMATECH e-Handbook and StRD, CMH-17 and STAT17 as quoted in public test suites, Montgomery's
/// piston rings, and values computed twice.
/// </summary>
public sealed class StatisticsChecksTests
{
    private static readonly CheckTable Table = ChartChecks.AddTo(
        AddCapability(AddTolerance(new CheckTable("g_statistics.csv")))
    );

    public static TheoryData<int, string> Data => Table.Data;

    [Theory]
    [MemberData(nameof(Data))]
    public void Statistics_CheckedRow_MatchesExpected(int index, string label)
    {
        Assert.Equal(label, Table.Rows[index].ToString());
        Table.Run(index);
    }

    private static CheckTable AddTolerance(CheckTable table) =>
        table
            .Number("G1", "k, B-basis", Exact)
            .Number("G1", "k, A-basis", Exact)
            .Number("G1", "k, B-basis, CMH-17 table", Exact)
            .Number("G1", "k, A-basis, CMH-17 table", Exact)
            .Number("G2", "k1 exact (noncentral t)", Exact)
            .Number(
                "G2",
                "k1 approximation",
                row => ToleranceFactor.OneSidedApproximate((int)row["n"], row["p"], row["conf"])
            )
            .Number(
                "G2",
                "k1 published (Natrella)",
                row => ToleranceFactor.OneSidedApproximate((int)row["n"], row["p"], row["conf"])
            )
            .Number(
                "G2",
                "k2 Howe",
                row => ToleranceFactor.TwoSidedHowe((int)row["n"], row["p"], row["conf"])
            )
            .Number(
                "G2",
                "k2 published",
                row => ToleranceFactor.TwoSidedHowe((int)row["n"], row["p"], row["conf"])
            )
            .Number(
                "G2.3",
                "upper one-sided limit, published page prints 102.096 with s = 2.68",
                row => ToleranceFactor.UpperLimit(row["mean"], row["s"], row["k1"])
            )
            .Number("G3", "sample mean", row => Data18(row).Mean)
            .Number("G3", "sample standard deviation", row => Data18(row).StandardDeviation)
            .Number("G3", "B-basis, normal", row => BasisValue.Normal(Data18(row), Basis.B).Value)
            .Number("G3", "A-basis, normal", row => BasisValue.Normal(Data18(row), Basis.A).Value)
            .Number(
                "G3",
                "B-basis, normal, STAT17",
                row => BasisValue.Normal(Data18(row), Basis.B).Value
            )
            .Number(
                "G3",
                "A-basis, normal, STAT17",
                row => BasisValue.Normal(Data18(row), Basis.A).Value
            )
            .Number("G3", "B-basis, Weibull", row => BasisValue.Weibull(Data18(row), Basis.B).Value)
            .Number("G3", "A-basis, Weibull", row => BasisValue.Weibull(Data18(row), Basis.A).Value)
            .Number("G3", "beta (shape)", row => WeibullSample.Fit(Data18(row)).Value.Shape)
            .Number("G3", "alpha (scale)", row => WeibullSample.Fit(Data18(row)).Value.Scale)
            .Number(
                "G3",
                "B-basis, Weibull, STAT17",
                row => BasisValue.Weibull(Data18(row), Basis.B).Value
            )
            .Number(
                "G3",
                "A-basis, Weibull, STAT17",
                row => BasisValue.Weibull(Data18(row), Basis.A).Value
            )
            .Number(
                "G4",
                "sample size, zero failures",
                row => SuccessRun.Trials(row["R"], row["C"])
            )
            .Number(
                "G4",
                "sample size, zero failures (99/90)",
                row => SuccessRun.Trials(row["R"], row["C"])
            )
            .Number(
                "G4",
                "demonstrated reliability, zero failures",
                row => SuccessRun.Reliability((int)row["n"], row["C"])
            )
            .Number("G4", "lower bound", row => Proportion(row).Lower)
            .Number("G4", "upper bound", row => Proportion(row).Upper)
            .Number("G4", "lower bound, published", row => Proportion(row).Lower)
            .Number("G4", "upper bound, published", row => Proportion(row).Upper);

    private static CheckTable AddCapability(CheckTable table) =>
        table
            .Number("G7", "Cp", row => Capable(row).Cp)
            .Number("G7", "Cp, published", row => Capable(row).Cp)
            .Number("G7", "Cp lower 95 %", row => Capable(row).CpInterval(0.95).Lower)
            .Number("G7", "Cp upper 95 %", row => Capable(row).CpInterval(0.95).Upper)
            .Number("G7", "upper 95 %, published", row => Capable(row).CpInterval(0.95).Upper)
            .Number(
                "G7",
                "lower 95 %, published in the textbook",
                row => Capable(row).CpInterval(0.95).Lower
            )
            .Number("G7", "Cpk lower 95 %", row => WithCpk(row).CpkInterval(row["conf"]).Lower)
            .Number("G7", "Cpk upper 95 %", row => WithCpk(row).CpkInterval(row["conf"]).Upper)
            .Number(
                "G7",
                "Cpk lower 95 %, published",
                row => WithCpk(row).CpkInterval(row["conf"]).Lower
            )
            .Number(
                "G7",
                "Cpk upper 95 %, published",
                row => WithCpk(row).CpkInterval(row["conf"]).Upper
            )
            .Number("G7", "Cpu = Cpk", row => Capable(row).Cpk)
            .Number("G7", "Cpl", row => Capable(row).CpLower)
            .Number("G7", "k", row => Capable(row).OffCentre)
            .Number("G7", "Cpm", row => Capable(row).Cpm!.Value)
            .Number("G9", "sample mean, certified", row => Data18(row).Mean)
            .Number(
                "G9",
                "sample standard deviation, certified",
                row => Data18(row).StandardDeviation
            );

    private static double Exact(CheckRow row) =>
        ToleranceFactor.OneSided((int)row["n"], row["p"], row["conf"]);

    private static Sample Data18(CheckRow row) => StatisticsData.Sample(row.Text("dataset"));

    private static Interval Proportion(CheckRow row) =>
        SuccessRun.Proportion((int)row["successes"], (int)row["trials"], 0.95);

    private static Capability Capable(CheckRow row)
    {
        var range = new ToleranceRange(
            row["LSL"],
            row["USL"],
            row.Has("target") ? row["target"] : null
        );
        var mean = row.Or("mean", (row["LSL"] + row["USL"]) / 2);
        return Capability.Compute(range, mean, row["s"], (int)row.Or("n", 20)).Value;
    }

    /// <summary>A process whose Cpk is the given one: limits at ± 3·Cpk about 0, standard deviation 1.</summary>
    private static Capability WithCpk(CheckRow row) =>
        Capability.Compute(new(-3 * row["Cpk"], 3 * row["Cpk"]), 0, 1, (int)row["n"]).Value;
}
