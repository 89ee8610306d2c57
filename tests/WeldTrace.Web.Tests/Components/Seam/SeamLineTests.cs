using Bunit;
using WeldTrace.Web.Components.Marks;
using WeldTrace.Web.Components.Seam;

namespace WeldTrace.Web.Tests.Components.Seam;

public sealed class SeamLineTests : ComponentTest
{
    private IRenderedComponent<SeamStation> Station(
        Mark mark,
        string? summary = null,
        bool current = false
    ) =>
        Render<SeamStation>(p =>
            p.Add(c => c.Number, 4)
                .Add(c => c.Title, "Proof test")
                .Add(c => c.Mark, mark)
                .Add(c => c.Word, "Ready")
                .Add(c => c.Who, "A. Person")
                .Add(c => c.When, "2026-11-25 08:00")
                .Add(c => c.Instant, new DateTimeOffset(2026, 11, 25, 7, 0, 0, TimeSpan.Zero))
                .Add(c => c.Summary, summary)
                .Add(c => c.Current, current)
                .AddChildContent("<p class='inner'>Records</p>")
        );

    [Fact]
    public void Render_Line_IsAnOrderedListOfItsStations()
    {
        var page = Render<SeamLine>(p =>
            p.AddChildContent<SeamStation>(s =>
                s.Add(c => c.Title, "Leak test").Add(c => c.Word, "Waiting")
            )
        );

        Assert.Single(page.FindAll("ol.seam > li.station"));
    }

    [Fact]
    public void Render_Station_HasAnchorStateWhoAndMachineTime()
    {
        var station = Station(Mark.Ready).Find("li#step-4");

        Assert.Contains("Step 4: ", station.TextContent, StringComparison.Ordinal);
        Assert.Equal("Ready", station.QuerySelector(".station-word")!.TextContent);
        Assert.Equal("A. Person", station.QuerySelector(".station-who")!.TextContent);
        Assert.StartsWith(
            "2026-11-25T07:00:00",
            station.QuerySelector("time")!.GetAttribute("datetime")
        );
    }

    [Theory]
    [InlineData(Mark.Passed, true)]
    [InlineData(Mark.Waived, true)]
    [InlineData(Mark.Failed, false)]
    [InlineData(Mark.Ready, false)]
    [InlineData(Mark.Waiting, false)]
    public void Render_Station_StandsOnWeldedSeamOnlyWhenDone(Mark mark, bool isDone) =>
        Assert.Equal(isDone, Station(mark).Find("li").ClassList.Contains("station-done"));

    [Fact]
    public void Render_CurrentStation_IsTheCurrentStep()
    {
        Assert.Equal(
            "step",
            Station(Mark.Ready, current: true).Find("li").GetAttribute("aria-current")
        );
        Assert.False(Station(Mark.Ready).Find("li").HasAttribute("aria-current"));
    }

    [Fact]
    public void Render_WithSummary_FoldsTheContentAway()
    {
        Assert.Equal(
            "2 runs",
            Station(Mark.Passed, "2 runs").Find("details > summary").TextContent
        );
        Assert.NotNull(Station(Mark.Passed, "2 runs").Find("details .inner"));
        Assert.Empty(Station(Mark.Passed).FindAll("details"));
    }
}
