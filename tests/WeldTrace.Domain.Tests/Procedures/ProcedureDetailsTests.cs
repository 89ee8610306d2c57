using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Quantities;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Procedures;

public sealed class ProcedureDetailsTests
{
    private static readonly ProcedureContent Plain = SampleProcedures.Content(SampleTools.Design());

    [Fact]
    public void Check_DetailsOfOldRevision_AreMissingAndGood() =>
        Assert.Empty((Plain with { Details = null }).Check());

    [Fact]
    public void Json_ContentWithoutDetails_DoesNotMentionThem()
    {
        var json = System.Text.Json.JsonSerializer.Serialize(
            Plain with
            {
                Details = null,
            },
            DomainJson.Options
        );

        Assert.DoesNotContain("details", json, StringComparison.Ordinal);
        Assert.DoesNotContain("controlledBy", json, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("butt", JointClass.A, true)]
    [InlineData("butt", JointClass.B, true)]
    [InlineData("butt", JointClass.C, false)]
    [InlineData("lap", JointClass.A, false)]
    public void Check_PartialPenetration_IsRefusedForGrooveWeldsAboveClassC(
        string jointType,
        JointClass jointClass,
        bool isRefused
    )
    {
        // NASA-STD-5006A w/Change 2 GWR 79: no partial-penetration groove welds in classes A and B.
        var content = Plain with
        {
            JointType = jointType,
            Details = new ProcedureDetails
            {
                Class = jointClass,
                Penetration = Penetration.Partial,
            },
        };

        Assert.Equal(isRefused, content.Check().Any(r => r.Code == "penetration"));
    }

    [Fact]
    public void Check_NegativeGapAndEmptyOtherSide_AreAllTold()
    {
        var content = Plain with
        {
            Details = new ProcedureDetails
            {
                LargestGap = new Measured("-0.1", "mm"),
                OuterDiameter = Length.Zero,
                Other = new OtherParent("", "T6", Length.Zero),
            },
        };

        Assert.Equal(
            ["LargestGap", "OtherAlloy", "OtherThickness", "OuterDiameter"],
            content.Check().Select(r => r.Field).Order()
        );
    }

    [Fact]
    public void Check_LowerBoundAboveSetPoint_NamesTheWindow()
    {
        var content = Plain with
        {
            Windows =
            [
                new(WeldParameter.SpindleSpeed, 800, 810, 820, "rev/min", true),
                Plain.WindowOf(WeldParameter.TravelSpeed)!,
            ],
        };

        var refusal = Assert.Single(content.Check());
        Assert.Equal("SpindleSpeed.SetPoint", refusal.Field);
        Assert.Contains("810 to 820", refusal.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_SignedParameters_MayLieBelowZero()
    {
        var content = Plain with
        {
            Windows =
            [
                .. Plain.Windows,
                new(WeldParameter.LateralOffset, -0.2m, -0.3m, -0.1m, "mm", true),
                new(WeldParameter.SideTiltAngle, 0, -0.5m, 0.5m, "°", false),
            ],
        };

        Assert.Empty(content.Check());
    }

    [Theory]
    [InlineData("butt", 3, null, false)]
    [InlineData("butt", 2.9, null, true)]
    [InlineData("butt", 4, 2.5, true)]
    [InlineData("lap", 1.6, null, false)]
    [InlineData("lap", 1.4, null, true)]
    [InlineData("lap", 1.4, 2.0, false)]
    public void Fit_PinOfThreeMillimetres_MustNotBeLongerThanWhatLiesUnderIt(
        string jointType,
        double thickness,
        double? other,
        bool isRefused
    )
    {
        var tool = SampleTools.Design();
        var content = Plain with
        {
            JointType = jointType,
            Thickness = Length.FromMillimetres(thickness),
            Details = new ProcedureDetails
            {
                Other = other is { } t ? new("5083", "O", Length.FromMillimetres(t)) : null,
            },
        };

        Assert.Equal(isRefused, ProcedureFit.Check(content, tool).Count > 0);
    }

    [Fact]
    public void Fields_EachField_StandsInOneGroupAndHasAName()
    {
        var placed = Enum.GetValues<ProcedureGroup>().SelectMany(ProcedureFields.In).ToList();

        Assert.Equal(Enum.GetValues<ProcedureField>().Order(), placed.Order());
        Assert.Equal(placed.Count, placed.Select(ProcedureFields.Name).Distinct().Count());
    }
}
