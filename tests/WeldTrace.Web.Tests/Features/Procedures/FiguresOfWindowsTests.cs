using Bunit;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Tooling;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Persistence.Loading;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Procedures.LiveFigures;
using WeldTrace.Web.Tests.Components;

namespace WeldTrace.Web.Tests.Features.Procedures;

public sealed class FiguresOfWindowsTests : ComponentTest
{
    private static readonly ToolDesign Tool = SampleTools.Design();
    private static readonly ProcedureContent Content = SampleProcedures.Content(Tool);

    [Fact]
    public void Render_WithoutWindows_SaysWhatIsNeeded()
    {
        var page = Show(Content with { Windows = [] });

        Assert.Contains(
            "once spindle and travel speed have a window",
            page,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Render_AllWindows_ShowsPitchEnergyHeatAndLigament()
    {
        var page = Show(
            Content with
            {
                JointType = "butt",
                Thickness = Length.FromMillimetres(3.5),
            }
        );

        // 200/800 = 0.250 mm/rev; 3.5 − 3.2 = 0.300 mm, worked by hand.
        Assert.Contains("0.250", page, StringComparison.Ordinal);
        Assert.Contains("Line energy into the weld", page, StringComparison.Ordinal);
        Assert.Contains("Solidus", page, StringComparison.Ordinal);
        Assert.Contains("0.300", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Render_TipInTheBacking_Warns()
    {
        var page = Show(Content with { JointType = "butt" });

        Assert.Contains("The tip reaches the backing.", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Render_PinLastMeasured_TakesThePlaceOfTheDrawnOne()
    {
        var content = Content with
        {
            JointType = "butt",
            Thickness = Length.FromMillimetres(3.5),
            Windows = [.. Content.Windows.Where(w => w.Parameter != WeldParameter.PlungeDepth)],
        };
        var pin = new MeasuredPin("T-0141", new DateOnly(2026, 3, 2), Length.FromMillimetres(2.91));

        var page = Show(content, pin);

        // 3.5 − 2.91 = 0.590 mm, worked by hand.
        Assert.Contains("0.590", page, StringComparison.Ordinal);
        Assert.Contains("T-0141 as measured on 2026-03-02", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Render_DrawingThatNamesTheProcedure_LaysOutItsPasses()
    {
        var design = SampleDesigns.Released();
        var joint = design.Content.Joints[0];

        var page = Render<FiguresOfWindows>(p =>
            p.Add(f => f.Content, Content)
                .Add(f => f.Tool, Tool.Geometry)
                .Add(f => f.Drawn, [new DrawnJoint(design, joint)])
        );

        Assert.Contains($"{design.Label}, joint {joint.Code}", page.Find("h3").TextContent);
        Assert.Equal(joint.Passes.Count, page.FindAll("section li:has(span)").Count);
        Assert.NotEmpty(page.FindAll("svg"));
        Assert.All(
            joint.Passes,
            pass =>
                Assert.Contains(
                    page.FindAll("details.working > summary"),
                    s => s.TextContent == $"How was pass {pass.Number} worked out?"
                )
        );
    }

    [Fact]
    public void Render_Typed_ShowsTheWorkingOfEveryFigureInPlace()
    {
        var page = Render<FiguresOfWindows>(p =>
            p.Add(f => f.Content, Content with { JointType = "butt" })
                .Add(f => f.Tool, Tool.Geometry)
        );

        // Pitch at the set points and at both ends, line energy, peak temperature, ligament.
        Assert.Equal(6, page.FindAll("details.working").Count);
        Assert.All(
            page.FindAll("details.working"),
            w =>
            {
                Assert.NotNull(w.QuerySelector(".formula"));
                Assert.NotNull(w.QuerySelector("cite.source"));
                Assert.Null(w.QuerySelector("a"));
            }
        );
    }

    [Fact]
    public void Render_NoDrawingNamesTheProcedure_SaysWhereToLayOutAPass() =>
        Assert.Contains("lay out a pass at the desk", Show(Content), StringComparison.Ordinal);

    private string Show(ProcedureContent content, MeasuredPin? pin = null) =>
        Render<FiguresOfWindows>(p =>
            p.Add(f => f.Content, content).Add(f => f.Tool, Tool.Geometry).Add(f => f.Pin, pin)
        ).Markup;
}
