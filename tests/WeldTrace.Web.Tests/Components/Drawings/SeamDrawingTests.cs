using Bunit;
using WeldTrace.Documents.Drawings;
using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Web.Components.Drawings;

namespace WeldTrace.Web.Tests.Components.Drawings;

// Hand-worked on a track of radius 100 mm: a quarter turn is 50·π = 157.08 mm, a whole one 628.32 mm.
public sealed class SeamDrawingTests : ComponentTest
{
    private static SeamPlan Plan(params SeamExcursion[] excursions) =>
        new()
        {
            TrackRadius = Length.FromMillimetres(100),
            Travel = RotationSense.Clockwise,
            Overlap = Angle.FromDegrees(20),
            Excursions = excursions,
        };

    private static SeamExcursion Excursion(double from, double to) =>
        new("7", "Axial force", Length.FromMillimetres(from), Length.FromMillimetres(to));

    [Fact]
    public void Render_Excursion_StandsAtItsAngleWithNumberAndPlace()
    {
        var page = Render<SeamDrawing>(p =>
            p.Add(c => c.Plan, Plan(Excursion(157.0796, 314.1593)))
        );

        // From 90° (right) to 180° (foot) on the circle of radius 150 about (200, 200).
        Assert.Equal(
            "M350 200 A150 150 0 0 1 200 350",
            page.Find("path.excursion").GetAttribute("d")
        );
        Assert.Contains(
            "90° to 180° along the travel",
            page.Find("figcaption").TextContent,
            StringComparison.Ordinal
        );
        Assert.Equal("7", page.Find("text.excursion-number").TextContent);
    }

    [Fact]
    public void Render_ExcursionInTheOverlap_LiesOnTheInnerArcAndSaysSo()
    {
        var page = Render<SeamDrawing>(p => p.Add(c => c.Plan, Plan(Excursion(635, 650))));

        Assert.Contains(
            "in the overlap",
            page.Find("figcaption").TextContent,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "A138 138",
            page.Find("path.excursion").GetAttribute("d"),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Render_ExcursionAcrossTheStart_IsDrawnOnBothTurns() =>
        Assert.Equal(
            2,
            Render<SeamDrawing>(p => p.Add(c => c.Plan, Plan(Excursion(620, 640))))
                .FindAll("path.excursion")
                .Count
        );

    [Fact]
    public void Render_InterruptedRun_DrawsOnlyWhatWasTravelled()
    {
        var page = Render<SeamDrawing>(p =>
            p.Add(c => c.Plan, Plan() with { Travelled = Length.FromMillimetres(157.0796) })
        );

        Assert.Equal("M200 50 A150 150 0 0 1 350 200", page.Find("path.welded").GetAttribute("d"));
    }

    [Fact]
    public void Render_NoExcursion_SaysSo() =>
        Assert.Contains(
            "No parameter left its window.",
            Render<SeamDrawing>(p => p.Add(c => c.Plan, Plan())).Markup,
            StringComparison.Ordinal
        );

    /// <summary>Clockwise from the top: 90° is to the right, 180° at the foot; shapes stand on a circle of radius 120, letters 20 further in.</summary>
    [Fact]
    public void Render_PlacesOfOtherRecords_StandAtTheirAnglesWithLetterAndWords()
    {
        var plan = Plan() with
        {
            Points =
            [
                new("a", SeamPointShape.Bar, "macroscopic section", Angle.FromDegrees(90)),
                new("b", SeamPointShape.Diamond, "visual: pore", Angle.FromDegrees(180)),
            ],
        };

        var page = Render<SeamDrawing>(p => p.Add(c => c.Plan, plan));

        Assert.Equal(
            ["M324 200 L364 200", "M200 312 L208 320 L200 328 L192 320 Z"],
            page.FindAll("path.spot").Select(path => path.GetAttribute("d"))
        );
        Assert.Equal(["a", "b"], page.FindAll("text.spot-letter").Select(t => t.TextContent));
        Assert.Contains(
            "b: visual: pore, 180.0° along the travel from the start.",
            page.Find("desc").TextContent,
            StringComparison.Ordinal
        );
    }
}
