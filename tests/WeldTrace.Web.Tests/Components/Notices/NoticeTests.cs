using Bunit;
using WeldTrace.Web.Components.Marks;
using WeldTrace.Web.Components.Notices;

namespace WeldTrace.Web.Tests.Components.Notices;

public sealed class NoticeTests : ComponentTest
{
    [Fact]
    public void Notice_Render_IsSpokenAsStatus() =>
        Assert.Equal(
            "Saved.",
            Render<Notice>(p => p.Add(c => c.Mark, Mark.Passed).AddChildContent("Saved."))
                .Find("[role=status]")
                .TextContent.Trim()
        );

    [Fact]
    public void Caution_Render_HasItsWordAndShape()
    {
        var page = Render<Caution>(p =>
            p.Add(c => c.Word, "Danger").AddChildContent("Stand back.")
        );

        Assert.Equal("Danger", page.Find(".caution-word").TextContent.Trim());
        Assert.NotNull(page.Find(".caution-word svg"));
    }

    [Fact]
    public void EmptyState_WithAction_LinksToTheNextStep()
    {
        var page = Render<EmptyState>(p =>
            p.Add(c => c.Title, "No tools yet.")
                .Add(c => c.Href, "/tools/new")
                .Add(c => c.ActionText, "Enter the first tool")
        );

        Assert.Equal("/tools/new", page.Find("a.next").GetAttribute("href"));
    }

    [Fact]
    public void EmptyState_WithoutAction_HasNoLink() =>
        Assert.Empty(
            Render<EmptyState>(p => p.Add(c => c.Title, "Nothing waits for you.")).FindAll("a")
        );
}
