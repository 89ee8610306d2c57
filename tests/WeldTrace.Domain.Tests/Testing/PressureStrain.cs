using WeldTrace.Domain.Testing;
using WeldTrace.Engineering.Conformity;
using WeldTrace.TestSupport.Records;
using Xunit;
using Measured = WeldTrace.Domain.Records.Measured;

namespace WeldTrace.Domain.Tests.Testing;

// A strain read in the place of a dimension.
public sealed partial class PressureDepartureTests
{
    /// <summary>300 µm/m over 130 mm are 0.039 mm, 0.05 mm are allowed; u = 10 µm/m gives U = 2·√2·10·0.13 = 3.7 µm.</summary>
    [Theory]
    [InlineData("320", Verdict.Pass)]
    [InlineData("-280", Verdict.Pass)]
    [InlineData("400", Verdict.Undecided)]
    [InlineData("520", Verdict.Fail)]
    public void Strain_InThePlaceOfADimension_GivesTheSet(string after, Verdict expected)
    {
        var test = Begun(Strain);
        Accept.All(Stage(test, 1, Hold("12.00", "12.00", "4.0")));

        Accept.All(Stage(test, 2, StrainBack(after)));

        Assert.Equal(expected, test.Stages[1].Verdict);
        Assert.Contains("rosette R1", test.Stages[1].Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Strain_WithoutItsLength_OrReadInMillimetres_IsRefused()
    {
        var begun = SampleTests.BeginPressure(
            _shop,
            Strain with
            {
                StrainLength = null,
            },
            wideGauge: true
        );
        Assert.Contains(nameof(PressureSetUp.StrainLength), begun.Refusals.Select(r => r.Field));
        var test = Begun(Strain);
        Accept.All(Stage(test, 1, Hold("12.00", "12.00", "4.0")));

        var refusal = Assert.Single(Stage(test, 2, SampleTests.Back("130.000")).Refusals);

        Assert.Equal("unit", refusal.Code);
    }

    private static PressureSetUp Strain =>
        SampleTests.SetUp with
        {
            ToBurst = true,
            DimensionName = "rosette R1, round the shell",
            DimensionBefore = new Measured("20", PressureSetUp.StrainUnit),
            DimensionUncertainty = new Measured("10", PressureSetUp.StrainUnit),
            StrainLength = new Measured("130", "mm"),
        };

    private static StageReading StrainBack(string after) =>
        SampleTests.Back("1") with
        {
            Dimension = new Measured(after, PressureSetUp.StrainUnit),
        };
}
