using CsCheck;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.ToolLife;

namespace WeldTrace.Engineering.Tests.ToolLife;

public sealed class ToolLifeFitTests
{
    [Fact]
    public void Fit_OneFailure_RefusesAndNamesTheAlternative()
    {
        var result = ToolLifeFit.Fit([Failed(10), Running(12), Running(8)]);
        Assert.Equal(RefusalReason.TooFewData, Assert.Single(result.Refusals).Reason);
    }

    [Fact]
    public void Fit_NoUse_Refuses() =>
        Assert.Contains(
            ToolLifeFit.Fit([Failed(0), Failed(12)]).Refusals,
            refusal => refusal.Where == "shortest use"
        );

    [Fact]
    public void Fit_EmptyList_Refuses() => Assert.True(ToolLifeFit.Fit([]).IsRefused);

    [Fact]
    public void Fit_FewFailures_SaysThatBoundsAreRough()
    {
        var fit = ToolLifeFit.Fit([Failed(10), Failed(14), Running(12), Running(15)]).Value;
        Assert.False(fit.Working.Validity.IsWithin);
        Assert.True(fit.IsExtrapolated(Length.FromMetres(16)));
        Assert.False(fit.IsExtrapolated(Length.FromMetres(12)));
    }

    [Fact]
    public void Fit_PublishedData_ReportsStepsAndResidual()
    {
        var solution = LifeData.Fit("NIST_8_4_1_3").ShapeSolution;
        Assert.InRange(solution.Iterations, 1, 100);
        Assert.InRange(solution.Residual, 0, 1e-12);
    }

    [Fact]
    public void Fit_ScaledLengths_ScalesTheLifeAndKeepsTheShape() =>
        Gen.Select(Gen.Double[1, 100].Array[5, 20], Gen.Double[0.01, 1000])
            .Sample(
                (lengths, factor) =>
                {
                    var one = ToolLifeFit.Fit([.. lengths.Select(Failed)]).Value;
                    var other = ToolLifeFit
                        .Fit([.. lengths.Select(length => Failed(length * factor))])
                        .Value;
                    Assert.Equal(1, other.Shape / one.Shape, 1e-8);
                    Assert.Equal(factor, other.Scale / one.Scale, factor * 1e-8);
                },
                iter: 100
            );

    [Fact]
    public void Survival_ShapeOne_ForgetsWhatTheToolHasDone() =>
        Gen.Select(Gen.Double[0.1, 50], Gen.Double[0.1, 50], Gen.Double[5, 50])
            .Sample(
                (used, next, scale) =>
                {
                    var exponential = new ToolSurvivalOfShapeOne(scale);
                    var fitted = exponential.Fit();
                    Assert.Equal(1, fitted.Shape, 1e-9);
                    Assert.Equal(
                        Math.Exp(-next / fitted.Scale.Metres),
                        fitted.Survival.Conditional(
                            Length.FromMetres(used),
                            Length.FromMetres(next)
                        ),
                        1e-9
                    );
                },
                iter: 100
            );

    [Fact]
    public void Survival_LongerUse_IsLessLikely() =>
        Gen.Select(Gen.Double[1, 40000], Gen.Double[1, 20000])
            .Sample(
                (length, more) =>
                {
                    var survival = LifeData.Fit("SHOCK_ABSORBER").Survival;
                    var (near, far) = (Length.FromMetres(length), Length.FromMetres(length + more));
                    Assert.True(survival.Reliability(far) <= survival.Reliability(near));
                    var interval = survival.ReliabilityInterval(near, 0.9);
                    Assert.InRange(survival.Reliability(near), interval.Lower, interval.Upper);
                    Assert.True(
                        survival.ConditionalLowerBound(near, far, 0.95)
                            <= survival.Conditional(near, far)
                    );
                }
            );

    [Fact]
    public void FurtherLife_WantedReliability_IsKeptExactly() =>
        Gen.Select(Gen.Double[0, 30000], Gen.Double[0.5, 0.999])
            .Sample(
                (used, wanted) =>
                {
                    var survival = LifeData.Fit("SHOCK_ABSORBER").Survival;
                    var next = survival.FurtherLife(Length.FromMetres(used), wanted);
                    Assert.Equal(wanted, survival.Conditional(Length.FromMetres(used), next), 1e-9);
                }
            );

    [Fact]
    public void ShowConditional_PublishedData_ShowsTheChanceAndItsBound()
    {
        var survival = LifeData.Fit("NIST_8_4_1_3").Survival;
        var (used, next) = (Length.FromMetres(100), Length.FromMetres(50));
        var working = survival.ShowConditional(used, next, 0.95);
        var hazards = working.Intermediates.Select(value => value.Value).ToList();

        // R(x | t) is R(t + x) / R(t), with R(t) = exp(-(t/eta)^beta).
        Assert.Equal(
            survival.Reliability(used + next) / survival.Reliability(used),
            Math.Exp(hazards[0] - hazards[1]),
            1e-12
        );
        Assert.Equal(
            [survival.Conditional(used, next), survival.ConditionalLowerBound(used, next, 0.95)],
            working.Results.Select(value => value.Value)
        );
    }

    [Fact]
    public void MeanResidualLife_NewTool_IsTheMeanLifeAndFallsWithWear()
    {
        var fit = LifeData.Fit("SHOCK_ABSORBER");
        Assert.Equal(1, fit.Survival.MeanResidualLife(Length.Zero) / fit.MeanLife, 1e-12);
        var last = fit.MeanLife;
        for (var used = 5000.0; used <= 200_000; used += 5000)
        {
            var left = fit.Survival.MeanResidualLife(Length.FromMetres(used));
            Assert.InRange(left.Metres, 1e-9, last.Metres);
            last = left;
        }
    }

    /// <summary>Against the definition: the sum of R(s)/R(t) over steps of 1 m, with an error below (step·hazard rate)²/24, 6e-8 at 80 km.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(9000)]
    [InlineData(30_000)]
    [InlineData(80_000)]
    public void MeanResidualLife_UsedTool_IsTheIntegralOfItsSurvival(double used)
    {
        var survival = LifeData.Fit("SHOCK_ABSORBER").Survival;
        var step = Length.FromMetres(1);
        var sum = Enumerable
            .Range(0, 200_000)
            .Sum(i => survival.Conditional(Length.FromMetres(used), step * (i + 0.5)));
        Assert.Equal(1, survival.MeanResidualLife(Length.FromMetres(used)) / (step * sum), 1e-6);
    }

    [Fact]
    public void Forecast_BeyondTheFittedTools_SaysSo()
    {
        var fit = LifeData.Fit("SHOCK_ABSORBER");
        var near = LifeForecast
            .Compute(fit, new(Length.FromMetres(8000), Length.FromMetres(500)))
            .Value;
        Assert.True(near.Working.Validity.IsWithin);
        Assert.InRange(near.SurvivesAtLeast, 0, near.Survives);
        var far = LifeForecast
            .Compute(fit, new(Length.FromMetres(8000), Length.FromMetres(90_000)))
            .Value;
        Assert.True(far.IsExtrapolated);
        Assert.False(far.Working.Validity.IsWithin);
        Assert.Equal(
            "next length",
            Assert.Single(LifeForecast.Compute(fit, new(Length.Zero, Length.Zero)).Refusals).Where
        );
    }

    private static LifeRecord Failed(double metres) => new(Length.FromMetres(metres), true);

    private static LifeRecord Running(double metres) => new(Length.FromMetres(metres), false);

    /// <summary>Two failures at t1 and t2 whose fitted shape is exactly one, found by bisection on t2/t1.</summary>
    private sealed class ToolSurvivalOfShapeOne(double scale)
    {
        public ToolLifeFit Fit()
        {
            var (low, high) = (1.5, 1e4);
            for (var step = 0; step < 200; step++)
            {
                var middle = (low + high) / 2;
                var shape = Of(middle).Shape;
                (low, high) = shape > 1 ? (middle, high) : (low, middle);
            }

            return Of((low + high) / 2);
        }

        private ToolLifeFit Of(double ratio) =>
            ToolLifeFit.Fit([Failed(scale), Failed(scale * ratio)]).Value;
    }
}
