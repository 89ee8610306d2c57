using Bunit;
using WeldTrace.Engineering;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Web.Components.Figures;
using WeldTrace.Web.Components.Marks;

namespace WeldTrace.Web.Tests.Components.Figures;

public sealed class FigureTests : ComponentTest
{
    private static WorkingBuilder Half() =>
        Working
            .Of("Radius of the track", "R = d / 2; d > 0")
            .Input("d", "diameter", 150, "mm")
            .Result("R", "radius", 75, "mm")
            .From("Definition.");

    [Fact]
    public void Quantity_Value_ShowsNumberAndUnitOfTheSite()
    {
        var metric = Render<Quantity>(p =>
            p.Add(c => c.Of, Pressure.FromBar(200)).Add(c => c.Digits, 3)
        );
        var inch = Render<Quantity>(p =>
            p.Add(c => c.Of, Length.FromInches(1)).AddCascadingValue(UnitSystem.InchPound)
        );

        Assert.Equal("200\u00a0bar", metric.Find(".quantity").TextContent);
        Assert.Equal("1.000\u00a0in", inch.Find(".quantity").TextContent);
    }

    [Fact]
    public void Quantity_Angle_HasNoSpaceBeforeItsSign() =>
        Assert.Equal(
            "2.5°",
            Render<Quantity>(p => p.Add(c => c.Of, Angle.FromDegrees(2.5)).Add(c => c.Digits, 2))
                .Find(".quantity")
                .TextContent
        );

    [Fact]
    public void Quantity_Nothing_SaysSo() =>
        Assert.Equal(
            "not recorded",
            Render<Quantity>(p => p.Add(c => c.Of, (Length?)null)).Find(".quantity").TextContent
        );

    [Fact]
    public void HowWorkedOut_Working_ShowsFormulaValuesAndSource()
    {
        var page = Render<HowWorkedOut>(p => p.Add(c => c.Working, Half().Build()));

        Assert.Equal(
            ["R = d / 2", "d > 0"],
            page.FindAll(".formula math").Select(m => m.GetAttribute("alttext"))
        );
        Assert.Contains("150 mm", page.Find("tbody").TextContent, StringComparison.Ordinal);
        Assert.Equal(
            ["Given", "Result"],
            page.FindAll("th[scope=rowgroup]").Select(t => t.TextContent)
        );
        Assert.Equal("Definition.", page.Find("cite").TextContent);
        Assert.Empty(page.FindAll(".working-outside"));
    }

    [Fact]
    public void HowWorkedOut_OutsideItsRange_WarnsInWords()
    {
        var working = Half().Validity(Validity.Outside("The wall is too thick for it.")).Build();

        var page = Render<HowWorkedOut>(p => p.Add(c => c.Working, working));

        Assert.Contains(
            "The wall is too thick for it.",
            page.Find(".working-outside").TextContent,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void LifeBar_HalfUsed_IsHalfLongAndSaysTheFigures()
    {
        var page = Render<LifeBar>(p =>
            p.Add(c => c.Used, Length.FromMetres(20))
                .Add(c => c.Limit, Length.FromMetres(40))
                .Add(c => c.NextPass, Length.FromMetres(0.5))
                .Add(c => c.Word, "In service")
                .Add(c => c.Mark, Mark.Passed)
        );

        Assert.Equal("200", page.Find(".life-used").GetAttribute("width"));
        Assert.Equal(
            "20.0\u00a0m of 40.0\u00a0m used, 20.0\u00a0m left; the next pass takes 0.500\u00a0m",
            page.Find("svg").GetAttribute("aria-label")
        );
    }

    [Fact]
    public void LifeBar_PastTheLimit_StaysInItsFrameAndSaysHowFar()
    {
        var page = Render<LifeBar>(p =>
            p.Add(c => c.Used, Length.FromMetres(50))
                .Add(c => c.Limit, Length.FromMetres(40))
                .Add(c => c.Word, "Past its life")
                .Add(c => c.Mark, Mark.Failed)
        );

        Assert.Equal("400", page.Find(".life-used").GetAttribute("width"));
        Assert.Contains("10.0\u00a0m past the limit", page.Markup, StringComparison.Ordinal);
    }
}
