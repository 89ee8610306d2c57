using WeldTrace.Domain.Testing;
using WeldTrace.Engineering.Conformity;
using WeldTrace.TestSupport.Records;
using Xunit;
using Measured = WeldTrace.Domain.Records.Measured;

namespace WeldTrace.Domain.Tests.Testing;

// Several places measured before pressure and at zero again.
public sealed partial class PressureDepartureTests
{
    /// <summary>0.05 mm are allowed; the worst of the places decides, and it alone is named when it is worse than the others.</summary>
    [Theory]
    [InlineData("130.010", "250.010", Verdict.Pass, "upper head", "weld")]
    [InlineData("130.010", "250.055", Verdict.Undecided, "upper head", null)]
    [InlineData("130.010", "250.300", Verdict.Fail, "upper head", null)]
    [InlineData("130.300", "250.010", Verdict.Fail, "weld", null)]
    public void Places_AreJudgedEach_AndTheWorstDecides(
        string first,
        string second,
        Verdict expected,
        string named,
        string? alsoNamed
    )
    {
        var test = Begun(TwoPlaces);
        Accept.All(Stage(test, 1, Hold("12.00", "12.00", "4.0")));

        Accept.All(Stage(test, 2, BackAt(first, second)));

        var stage = test.Stages[1];
        Assert.Equal(expected, stage.Verdict);
        Assert.Contains(named, stage.Sentence, StringComparison.Ordinal);
        Assert.Equal(
            alsoNamed is null ? 1 : 2,
            stage.Sentence.Split("Permanent set of").Length - 1
        );
        Assert.Equal(
            [first, second],
            test.Places(stage, _shop.Design.Content.Pressures).Select(p => p.After.Digits)
        );
        Assert.Equal(
            [
                "Permanent set of outer diameter at the weld",
                "Permanent set of height of the upper head",
            ],
            test.Workings(stage, _shop.Design).Select(w => w.Title)
        );
    }

    [Fact]
    public void Places_MissingInAnotherUnitOrOfOneName_AreRefused()
    {
        Assert.Equal(
            nameof(PressureSetUp.FurtherPlaces),
            Refused(
                TwoPlaces with
                {
                    FurtherPlaces = [new("Outer diameter at the weld ", Mm("1"), null)],
                }
            )
        );
        Assert.Equal(
            nameof(PressureSetUp.FurtherPlaces),
            Refused(
                TwoPlaces with
                {
                    FurtherPlaces = [new("head", new("20", PressureSetUp.StrainUnit), null)],
                }
            )
        );
        Assert.Equal(
            nameof(PressureSetUp.FurtherPlaces),
            Refused(
                TwoPlaces with
                {
                    FurtherPlaces =
                    [
                        .. "abcd".Select(c => new MeasuredPlace($"{c}", Mm("9"), null)),
                    ],
                }
            )
        );
        var test = Begun(TwoPlaces);
        Accept.All(Stage(test, 1, Hold("12.00", "12.00", "4.0")));

        var missing = Assert.Single(Stage(test, 2, SampleTests.Back("130.000")).Refusals);
        var inches = Assert.Single(Stage(test, 2, BackAt("130.000", "9.843")).Refusals);

        Assert.Equal(("places", nameof(StageReading.Dimension)), (missing.Code, missing.Field));
        Assert.Equal(("unit", nameof(StageReading.FurtherDimensions)), (inches.Code, inches.Field));
        Assert.Single(test.Stages);
    }

    private string? Refused(PressureSetUp setUp) =>
        Assert.Single(SampleTests.BeginPressure(_shop, setUp, wideGauge: true).Refusals).Field;

    private static PressureSetUp TwoPlaces =>
        SampleTests.SetUp with
        {
            ToBurst = true,
            DimensionName = "outer diameter at the weld",
            FurtherPlaces = [new("height of the upper head", Mm("250.000"), null)],
        };

    private static StageReading BackAt(string first, string second) =>
        SampleTests.Back(first) with
        {
            FurtherDimensions = [Mm(second)],
        };

    private static Measured Mm(string digits) => new(digits, "mm");
}
