using Bunit;
using WeldTrace.Engineering.Conformity;
using WeldTrace.Web.Components.Marks;

namespace WeldTrace.Web.Tests.Components.Marks;

public sealed class VerdictMarkTests : ComponentTest
{
    [Theory]
    [InlineData(Verdict.Pass, "Passed", "Meets the limit")]
    [InlineData(Verdict.Fail, "Failed", "Outside the limit")]
    [InlineData(Verdict.Undecided, "Undecided", "Undecided: not a pass")]
    [InlineData(null, "Waiting", "Not judged yet")]
    public void Render_EachOutcome_HasItsOwnWordAndShape(Verdict? verdict, string mark, string word)
    {
        var page = Render<VerdictMark>(p => p.Add(c => c.Verdict, verdict));

        Assert.Equal(mark, page.Find(".mark").GetAttribute("data-mark"));
        Assert.Equal(word, page.Find(".mark-word").TextContent);
    }

    [Fact]
    public void Render_WithFigures_ShowsMeasuredAgainstLimit()
    {
        var page = Render<VerdictMark>(p =>
            p.Add(c => c.Verdict, Verdict.Pass)
                .Add(c => c.Measured, "0.21 mm")
                .Add(c => c.Limit, "≤ 0.40 mm")
        );

        Assert.Equal("0.21 mm", page.Find(".verdict-figures").TextContent.Trim());
        Assert.Equal("against ≤ 0.40 mm", page.Find(".verdict-limit").TextContent);
    }
}
