using Bunit;
using WeldTrace.Web.Components.Marks;

namespace WeldTrace.Web.Tests.Components.Marks;

public sealed class StateMarkTests : ComponentTest
{
    public static TheoryData<Mark> EveryMark => [.. Enum.GetValues<Mark>()];

    [Theory]
    [MemberData(nameof(EveryMark))]
    public void Render_EveryMark_HasWordAndShapeHiddenFromReaders(Mark mark)
    {
        var page = Render<StateMark>(p => p.Add(c => c.Mark, mark).Add(c => c.Word, "In work"));

        Assert.Equal("In work", page.Find(".mark-word").TextContent);
        var shape = page.Find("svg");
        Assert.Equal("true", shape.GetAttribute("aria-hidden"));
        Assert.NotEmpty(shape.Children);
    }

    [Fact]
    public void Render_EveryMark_DrawsADifferentShape()
    {
        var shapes = Enum.GetValues<Mark>()
            .Select(m => Render<MarkShape>(p => p.Add(c => c.Mark, m)).Find("svg").InnerHtml)
            .ToList();

        Assert.Equal(shapes.Count, shapes.Distinct().Count());
    }

    [Fact]
    public void Render_WithNote_ShowsItAfterTheWord()
    {
        var page = Render<StateMark>(p =>
            p.Add(c => c.Mark, Mark.Held)
                .Add(c => c.Word, "On hold")
                .Add(c => c.Note, "since Monday")
        );

        Assert.EndsWith("since Monday", page.Find(".mark").TextContent.Trim());
    }

    [Fact]
    public void Render_HostileWord_IsTextNotMarkup()
    {
        var page = Render<StateMark>(p =>
            p.Add(c => c.Mark, Mark.Held).Add(c => c.Word, "<script>x</script>")
        );

        Assert.Empty(page.FindAll("script"));
    }
}
