using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using WeldTrace.Web.Layout;

namespace WeldTrace.Web.Tests.Components.Frame;

public sealed class SiteHeaderTests : ComponentTest
{
    private static readonly SiteFrame Signed = new()
    {
        SiteName = "North Workshop",
        PersonName = "A. Person",
    };

    private IRenderedComponent<SiteHeader> At(string path, SiteFrame? frame)
    {
        Services.GetRequiredService<NavigationManager>().NavigateTo(path);
        return Render<SiteHeader>(p =>
        {
            if (frame is not null)
            {
                p.AddCascadingValue(frame);
            }
        });
    }

    [Theory]
    [InlineData("/vessels", "page")]
    [InlineData("/vessels/nr-0042?x=1", "true")]
    [InlineData("/lots/new", "true")]
    [InlineData("/designs", "true")]
    public void Render_InsideAPlace_MarksItsLink(string path, string current)
    {
        var marked = At(path, Signed).FindAll("nav a[aria-current]");

        Assert.Equal("Vessels", Assert.Single(marked).TextContent);
        Assert.Equal(current, marked[0].GetAttribute("aria-current"));
    }

    [Fact]
    public void Render_PathThatOnlyBeginsAlike_MarksNothing() =>
        Assert.Empty(At("/vesselsandmore", Signed).FindAll("nav a[aria-current]"));

    [Fact]
    public void Render_SignedIn_ShowsNameAndAPostedSignOut()
    {
        var page = At("/", Signed);

        Assert.Equal("A. Person", page.Find(".site-person > a").TextContent);
        Assert.Equal("post", page.Find(".site-person form").GetAttribute("method"));
        Assert.NotNull(page.Find(".site-person form input[type=hidden]"));
    }

    [Fact]
    public void Render_Visitor_SeesNoPlacesAndNoSignOut()
    {
        var page = At("/", Signed with { PersonName = null });

        Assert.Equal("North Workshop", page.Find(".site-name").TextContent);
        Assert.Empty(page.FindAll("nav, form"));
    }

    [Fact]
    public void Render_FewerLinks_ShowsOnlyThose()
    {
        var page = At("/", Signed with { Links = [new SiteLink("Vessels", "/vessels")] });

        Assert.Single(page.FindAll("nav a"));
    }

    [Fact]
    public void Render_Demonstration_SaysSoOnEveryPage()
    {
        Assert.Single(At("/", Signed with { IsDemonstration = true }).FindAll(".demo-banner"));
        Assert.Empty(At("/", Signed).FindAll(".demo-banner"));
    }

    [Fact]
    public void Render_SkipLink_LeadsToThePageItself() =>
        Assert.EndsWith(
            "/vessels?sort=serial#main",
            At("/vessels?sort=serial", Signed).Find(".skip").GetAttribute("href"),
            StringComparison.Ordinal
        );
}
