using CsCheck;
using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.PressureTesting;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Tests.PressureTesting;

/// <summary>
/// No published case: properties that every verdict must have. Worse readings never get a better verdict, and a wider uncertainty never makes a pass of what was none. A rise of pressure is no
/// better reading than a steady one; it counts as uncertainty, so holds are compared from no drop upwards.
/// </summary>
public sealed class VerdictPropertyTests
{
    private static readonly Gen<double> Share = Gen.Double[0, 1];

    [Theory]
    [InlineData(TestMedium.Gas)]
    [InlineData(TestMedium.Liquid)]
    public void Hold_IsMonotone_AndUncertaintyMakesNoPass(TestMedium medium) =>
        Gen.Select(Share, Share, Share, Share, Gen.Double[-5, 5])
            .Sample(
                (drop, more, uncertainty, wider, warmer) =>
                {
                    var verdict = Hold(medium, drop, uncertainty, 0.1, warmer);
                    AssertNotBetter(verdict, Hold(medium, drop + more, uncertainty, 0.1, warmer));
                    AssertNoPass(verdict, Hold(medium, drop, uncertainty + wider, 0.1, warmer));
                    AssertNoPass(verdict, Hold(medium, drop, uncertainty, 0.1 + wider, warmer));
                }
            );

    [Fact]
    public void Hold_ThatRises_GetsNoPassByAWiderUncertainty() =>
        Gen.Select(Share, Share, Share)
            .Sample(
                (rise, uncertainty, wider) =>
                    AssertNoPass(
                        Hold(TestMedium.Gas, -rise, uncertainty, 0.1, 0),
                        Hold(TestMedium.Gas, -rise, uncertainty + wider, 0.1, 0)
                    )
            );

    [Fact]
    public void Hold_ThatIsShorter_IsNotBetter() =>
        Gen.Select(Share, Gen.Double[1, 60], Gen.Double[1, 60])
            .Sample(
                (drop, minutes, more) =>
                    AssertNotBetter(
                        Hold(TestMedium.Gas, drop, 0.05, 0.1, 0, minutes + more),
                        Hold(TestMedium.Gas, drop, 0.05, 0.1, 0, minutes)
                    )
            );

    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void Set_IsMonotone_AndUncertaintyMakesNoPass(int direction) =>
        Gen.Select(Share, Share, Share, Share)
            .Sample(
                (set, more, uncertainty, wider) =>
                {
                    var verdict = Set(direction * set, uncertainty);
                    AssertNotBetter(verdict, Set(direction * (set + more), uncertainty));
                    AssertNoPass(verdict, Set(direction * set, uncertainty + wider));
                }
            );

    /// <summary>100 µm/m over 170 mm are 0.017 mm by hand.</summary>
    [Fact]
    public void Strain_IsMonotone_AndUncertaintyMakesNoPass()
    {
        Assert.Equal(0.017, Strain(100, 5).Set.Millimetres, 1e-12);
        Gen.Select(Gen.Double[0, 500], Gen.Double[0, 500], Gen.Double[1, 100], Gen.Double[0, 100])
            .Sample(
                (strain, more, uncertainty, wider) =>
                {
                    var verdict = Strain(strain, uncertainty).Judgement.Verdict;
                    AssertNotBetter(verdict, Strain(strain + more, uncertainty).Judgement.Verdict);
                    AssertNoPass(verdict, Strain(strain, uncertainty + wider).Judgement.Verdict);
                }
            );
    }

    [Fact]
    public void Burst_IsMonotone_AndUncertaintyMakesNoPass() =>
        Gen.Select(Gen.Double[10, 200], Gen.Double[0, 100], Gen.Double[0, 20], Gen.Double[0, 20])
            .Sample(
                (bar, more, uncertainty, wider) =>
                {
                    var verdict = Burst(bar, uncertainty);
                    AssertNotBetter(Burst(bar + more, uncertainty), verdict);
                    AssertNoPass(verdict, Burst(bar, uncertainty + wider));
                }
            );

    // Fail is worse than undecided, undecided worse than pass.
    private static int Rank(Verdict verdict) =>
        verdict switch
        {
            Verdict.Pass => 2,
            Verdict.Undecided => 1,
            _ => 0,
        };

    private static void AssertNotBetter(Verdict better, Verdict worse) =>
        Assert.True(Rank(worse) <= Rank(better), $"{worse} after {better}");

    private static void AssertNoPass(Verdict narrow, Verdict wide) =>
        Assert.False(narrow != Verdict.Pass && wide == Verdict.Pass, $"pass after {narrow}");

    private static Verdict Hold(
        TestMedium medium,
        double drop,
        double uncertainty,
        double kelvin,
        double warmer,
        double minutes = 30
    ) =>
        HoldEvaluation
            .Evaluate(
                new HoldTest
                {
                    Medium = medium,
                    Readings =
                    [
                        new(
                            TimeSpan.Zero,
                            Pressure.FromBar(61),
                            Temperature.FromDegreesCelsius(20)
                        ),
                        new(
                            TimeSpan.FromMinutes(minutes),
                            Pressure.FromBar(
                                (61 - drop) * (medium == TestMedium.Gas ? 1 + (warmer / 293.15) : 1)
                            ),
                            Temperature.FromDegreesCelsius(20 + warmer)
                        ),
                    ],
                    PressureUncertainty = Pressure.FromBar(0.001 + (uncertainty / 5)),
                    TemperatureUncertaintyKelvin = kelvin,
                    AllowedDrop = WrittenLimit.Exact(0.5, "bar"),
                    RequiredHold = TimeSpan.FromMinutes(30),
                }
            )
            .Value.Judgement.Verdict;

    private static Verdict Set(double set, double uncertainty) =>
        PermanentSet
            .Evaluate(
                new SetMeasurement(
                    "outer diameter",
                    Length.FromMillimetres(170),
                    Length.FromMillimetres(170 + (set / 10)),
                    Length.FromMillimetres(0.0001 + (uncertainty / 50)),
                    WrittenLimit.Exact(0.05, "mm")
                )
            )
            .Value.Judgement.Verdict;

    private static PermanentStrain Strain(double stayed, double uncertainty) =>
        PermanentStrain
            .Evaluate(
                new StrainMeasurement(
                    "gauge R1",
                    12,
                    12 + stayed,
                    uncertainty,
                    Length.FromMillimetres(170),
                    WrittenLimit.Exact(0.05, "mm")
                )
            )
            .Value;

    private static Verdict Burst(double bar, double uncertainty) =>
        BurstRatio
            .Evaluate(
                Pressure.FromBar(bar),
                Pressure.FromBar(uncertainty),
                Pressure.FromBar(40),
                WrittenLimit.Exact(2, "")
            )
            .Value.Judgement.Verdict;
}
