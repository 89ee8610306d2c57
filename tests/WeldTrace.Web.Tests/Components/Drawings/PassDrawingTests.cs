using Bunit;
using WeldTrace.Documents.Drawings;
using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Web.Components.Drawings;

namespace WeldTrace.Web.Tests.Components.Drawings;

public sealed class PassDrawingTests : ComponentTest
{
    private static PassTrack Track(
        string name,
        double radius,
        RotationSense travel,
        WeldSide outer
    ) =>
        new()
        {
            Name = name,
            TrackRadius = Length.FromMillimetres(radius),
            ShoulderDiameter = Length.FromMillimetres(18),
            PinDiameter = Length.FromMillimetres(6),
            Spindle = RotationSense.Clockwise,
            Travel = travel,
            OuterSide = outer,
            InnerSide = outer == WeldSide.Advancing ? WeldSide.Retreating : WeldSide.Advancing,
            Overlap = Angle.FromDegrees(20),
        };

    private IRenderedComponent<PassDrawing> Draw(params PassTrack[] tracks) =>
        Render<PassDrawing>(p => p.Add(c => c.Plan, new PassPlan("Joint C1", tracks)));

    [Fact]
    public void Render_TwoPasses_SaysEachInWordsForReaders()
    {
        var page = Draw(
            Track("1", 60, RotationSense.Clockwise, WeldSide.Advancing),
            Track("2", 80, RotationSense.CounterClockwise, WeldSide.Retreating)
        );

        var svg = page.Find("svg[role=img]");
        var spoken = svg.GetAttribute("aria-labelledby")!
            .Split(' ')
            .Select(id => page.Find("#" + id).TextContent)
            .ToList();
        Assert.Equal("Joint C1: plan view from the shoulder side", spoken[0]);
        Assert.Contains("Pass 1: radius 60\u00a0mm", spoken[1], StringComparison.Ordinal);
        Assert.Contains(
            "travel counter-clockwise; retreating side outside, advancing side inside",
            spoken[1],
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Render_Sides_StandOutsideAndInsideAsGiven()
    {
        var page = Draw(Track("1", 60, RotationSense.Clockwise, WeldSide.Advancing));

        var sides = page.FindAll("text.side").Select(t => t.TextContent);
        Assert.Equal(["AS", "RS"], sides);
    }

    [Fact]
    public void Render_ShoulderBand_IsToScale()
    {
        var page = Draw(Track("1", 60, RotationSense.Clockwise, WeldSide.Advancing));

        // Outer edge 60 + 9 = 69 mm reaches 176 units, so 18 mm are 18 × 176 / 69 = 45.91 units.
        Assert.Equal("45.91", page.Find(".shoulder-band").GetAttribute("stroke-width"));
    }

    [Fact]
    public void Render_InchPoundSite_ShowsInches()
    {
        var page = Render<PassDrawing>(p =>
            p.Add(
                    c => c.Plan,
                    new PassPlan(
                        "J",
                        [Track("1", 63.5, RotationSense.Clockwise, WeldSide.Advancing)]
                    )
                )
                .AddCascadingValue(UnitSystem.InchPound)
        );

        Assert.Contains("radius 2.5\u00a0in", page.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Render_NoPasses_DrawsTheEmptyPlan() => Assert.Empty(Draw().FindAll(".track"));

    [Fact]
    public void Render_HasNoStyleAttributes() =>
        Assert.Empty(
            Draw(Track("1", 60, RotationSense.Clockwise, WeldSide.Advancing)).FindAll("[style]")
        );
}
