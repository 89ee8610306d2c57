using Bunit;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Tests.Components.Forms;

public sealed class ErrorSummaryTests : ComponentTest
{
    [Fact]
    public void Render_NoFaults_ShowsNothing() =>
        Assert.Empty(Render<ErrorSummary>(p => p.Add(c => c.Items, [])).Markup.Trim());

    [Fact]
    public void Render_Faults_AlertsAndLinksToEachField()
    {
        var page = Render<ErrorSummary>(p =>
            p.Add(
                c => c.Items,
                [
                    new FieldFault("In.Life", "Enter a life."),
                    new FieldFault("", "Somebody else saved first."),
                ]
            )
        );

        Assert.Equal("alert", page.Find(".error-summary").GetAttribute("role"));
        Assert.EndsWith("#In-Life", page.Find("a").GetAttribute("href"), StringComparison.Ordinal);
        Assert.Equal("Somebody else saved first.", page.FindAll("li")[1].TextContent.Trim());
    }

    [Fact]
    public void Render_CascadedFaults_AreShown()
    {
        IReadOnlyList<FieldFault> faults = [new("In.A", "Mend A.")];

        var page = Render<ErrorSummary>(p => p.AddCascadingValue(faults));

        Assert.Contains("Mend A.", page.Markup, StringComparison.Ordinal);
    }
}
