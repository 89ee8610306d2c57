using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Tests.Checks;
using WeldTrace.Engineering.ToolLife;

namespace WeldTrace.Engineering.Tests.ToolLife;

/// <summary>
/// Every row of c_tool_life.csv: fits of published data sets computed twice (one of them R survreg) and as published in NIST/SEMATECH
/// e-Handbook 8.4.1.3 and in the documentation of two reliability packages.
/// </summary>
public sealed class ToolLifeChecksTests
{
    private static readonly CheckTable Table = AddSurvival(
        AddFits(new CheckTable("c_tool_life.csv"))
    );

    public static TheoryData<int, string> Data => Table.Data;

    [Theory]
    [MemberData(nameof(Data))]
    public void ToolLife_CheckedRow_MatchesExpected(int index, string label)
    {
        Assert.Equal(label, Table.Rows[index].ToString());
        Table.Run(index);
    }

    private static CheckTable AddFits(CheckTable table)
    {
        foreach (var suffix in new[] { "", ", published", " (log-normal approx.)" })
        {
            AddFit(table, suffix);
        }

        return table
            .Number("C1", "beta (shape)", row => Fit(row).Shape)
            .Number("C1", "eta (scale)", row => Fit(row).Scale.Metres)
            .Number("C1", "standard error of eta", row => Fit(row).ScaleStandardError.Metres)
            .Number("C1", "standard error of beta", row => Fit(row).ShapeStandardError)
            .Number("C1", "covariance of ln(eta) and ln(beta)", row => Fit(row).CovarianceOfLogs)
            .Number("C2", "eta (scale), published", row => Fit(row).Scale.Metres)
            .Number("C2", "beta (shape), published", row => Fit(row).Shape)
            .Number("C2", "AIC = 2k-2lnL with k=2, published", row => Fit(row).Aic)
            .Number("C2", "AICc, published", row => Fit(row).AicCorrected!.Value)
            .Number("C2", "BIC, published", row => Fit(row).Bic)
            .Number(
                "C6",
                "beta lower 95 %, likelihood ratio",
                row => Fit(row).ShapeLikelihoodInterval(0.95)!.Value.Lower
            )
            .Number(
                "C6",
                "beta upper 95 %, likelihood ratio",
                row => Fit(row).ShapeLikelihoodInterval(0.95)!.Value.Upper
            )
            .Number(
                "C6",
                "eta lower 95 %, likelihood ratio",
                row => Fit(row).ScaleLikelihoodInterval(0.95)!.Value.Lower.Metres
            )
            .Number(
                "C6",
                "eta upper 95 %, likelihood ratio",
                row => Fit(row).ScaleLikelihoodInterval(0.95)!.Value.Upper.Metres
            );
    }

    private static void AddFit(CheckTable table, string suffix) =>
        table
            .Number("", "eta" + suffix, row => Fit(row).Scale.Metres)
            .Number("", "beta" + suffix, row => Fit(row).Shape)
            .Number("", "se(eta)" + suffix, row => Fit(row).ScaleStandardError.Metres)
            .Number("", "se(beta)" + suffix, row => Fit(row).ShapeStandardError)
            .Number("", "log-likelihood" + suffix, row => Fit(row).LogLikelihood)
            .Number("", "mean life" + suffix, row => Fit(row).MeanLife.Metres)
            .Number(
                "",
                "standard deviation of life" + suffix,
                row => Fit(row).LifeStandardDeviation.Metres
            )
            .Number("", "eta lower 95 %" + suffix, row => Fit(row).ScaleInterval(0.95).Lower.Metres)
            .Number("", "eta upper 95 %" + suffix, row => Fit(row).ScaleInterval(0.95).Upper.Metres)
            .Number("", "beta lower 95 %" + suffix, row => Fit(row).ShapeInterval(0.95).Lower)
            .Number("", "beta upper 95 %" + suffix, row => Fit(row).ShapeInterval(0.95).Upper);

    private static CheckTable AddSurvival(CheckTable table) =>
        table
            .Number("C3", "life quantile", row => Survival(row).Quantile(row["p"]).Metres)
            .Number(
                "C3",
                "lower one-sided 95 % bound of the quantile",
                row => Survival(row).QuantileLowerBound(row["p"], 0.95).Metres
            )
            .Number("C4", "reliability", row => Survival(row).Reliability(At(row)))
            .Number("C4", "reliability, published", row => Survival(row).Reliability(At(row)))
            .Number(
                "C4",
                "reliability lower bound, two-sided 80 %",
                row => Survival(row).ReliabilityInterval(At(row), 0.80).Lower
            )
            .Number(
                "C4",
                "reliability upper bound, two-sided 80 %",
                row => Survival(row).ReliabilityInterval(At(row), 0.80).Upper
            )
            .Number(
                "C4",
                "reliability lower bound, two-sided 95 %",
                row => Survival(row).ReliabilityInterval(At(row), 0.95).Lower
            )
            .Number(
                "C4",
                "reliability upper bound, two-sided 95 %",
                row => Survival(row).ReliabilityInterval(At(row), 0.95).Upper
            )
            .Number(
                "C4",
                "lower bound two-sided 80 %, published",
                row => Survival(row).ReliabilityInterval(At(row), 0.80).Lower
            )
            .Number(
                "C4",
                "upper bound two-sided 80 %, published",
                row => Survival(row).ReliabilityInterval(At(row), 0.80).Upper
            )
            .Number(
                "C5",
                "conditional reliability",
                row => Survival(row).Conditional(At(row), Next(row))
            )
            .Number(
                "C5",
                "conditional reliability, one-sided 95 % lower bound",
                row => Survival(row).ConditionalLowerBound(At(row), Next(row), 0.95)
            )
            .Number(
                "C5",
                "further use with conditional reliability 0.95 (point estimate)",
                row => Survival(row).FurtherLife(At(row), row["Rc"]).Metres
            )
            .Number("C7", "required sample size, zero failures (ceiling)", Tools)
            .Number("C7", "required sample size, published", Tools)
            .Number("C8", "lower one-sided 95 % bound of eta", LowerScale)
            .Number("C9", "survival estimate", ProductLimit)
            .Number("C9", "survival estimate after the last failure", ProductLimit)
            .Number(
                "C10",
                "median rank",
                row => SurvivalEstimate.MedianRankBenard((int)row["i"], (int)row["n"])
            )
            .Number(
                "C10",
                "exact median rank",
                row => SurvivalEstimate.MedianRank((int)row["i"], (int)row["n"])
            );

    private static ToolLifeFit Fit(CheckRow row) => LifeData.Fit(row.Text("dataset"));

    private static ToolSurvival Survival(CheckRow row) => Fit(row).Survival;

    private static Length At(CheckRow row) => Length.FromMetres(row["t"]);

    private static Length Next(CheckRow row) => Length.FromMetres(row["x"]);

    private static double Tools(CheckRow row) =>
        AssumedShapeLife.ToolsWithoutFailure(row["R"], row["C"], row["lifetimes"], row["beta"]);

    private static double LowerScale(CheckRow row)
    {
        var failures = (int)row["failures"];
        var records = row.List("times")
            .Select((time, i) => new LifeRecord(Length.FromMetres(time), i < failures));
        return AssumedShapeLife.LowerScale([.. records], row["beta"], row["C"]).Value.Metres;
    }

    private static double ProductLimit(CheckRow row) =>
        SurvivalEstimate
            .ProductLimit(LifeData.Records(row.Text("dataset")))
            .Last(step => step.At.Metres <= row["t"])
            .Survival;
}
