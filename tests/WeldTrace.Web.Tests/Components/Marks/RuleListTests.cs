using Bunit;
using WeldTrace.Web.Components.Marks;

namespace WeldTrace.Web.Tests.Components.Marks;

public sealed class RuleListTests : ComponentTest
{
    private static readonly RuleLine Stopping = new(
        "F5",
        Mark.Failed,
        "Stops work",
        "The gauge was due for calibration. Calibrate it.",
        "Site rule",
        LimitUnchecked: true
    );

    [Fact]
    public void Render_Line_HasIdStateReasonSourceAndAnchor()
    {
        var page = Render<RuleList>(p => p.Add(c => c.Lines, [Stopping]));

        var line = page.Find("li#rule-F5");
        Assert.Equal("F5", line.QuerySelector(".rule-id")!.TextContent);
        Assert.Equal("Stops work", line.QuerySelector(".mark-word")!.TextContent);
        Assert.Contains("Calibrate it.", line.TextContent, StringComparison.Ordinal);
        Assert.Equal("Site rule", line.QuerySelector("cite")!.TextContent);
    }

    [Fact]
    public void Render_LimitUnchecked_SaysSo()
    {
        var marked = Render<RuleList>(p => p.Add(c => c.Lines, [Stopping]));
        var plain = Render<RuleList>(p =>
            p.Add(c => c.Lines, [Stopping with { LimitUnchecked = false }])
        );

        Assert.Single(marked.FindAll(".unchecked"));
        Assert.Empty(plain.FindAll(".unchecked"));
    }
}
