using Microsoft.Playwright;
using WeldTrace.Web.Demo;

namespace WeldTrace.Browser.Tests;

/// <summary>A person at a browser of their own.</summary>
internal sealed class Visitor(IBrowserContext context, IPage page, Uri site) : IAsyncDisposable
{
    public IPage Page => page;

    public static async Task<Visitor> SignInAsync(
        SiteFixture site,
        DemoPerson person,
        int width = 1280
    )
    {
        var context = await site.Browser.NewContextAsync(
            new()
            {
                ViewportSize = new() { Width = width, Height = 1180 },
                AcceptDownloads = true,
            }
        );
        context.SetDefaultTimeout(20_000);
        var visitor = new Visitor(context, await context.NewPageAsync(), site.Address);
        await visitor.GoToAsync("/sign-in");
        await visitor.FillAsync("Sign-in name", person.SignInName);
        await visitor.FillAsync("Password", DemoPeople.Password);
        await visitor.PressAsync("Sign in");
        await visitor.Page.WaitForURLAsync(url =>
            !url.Contains("sign-in", StringComparison.Ordinal)
        );
        return visitor;
    }

    public Task<IResponse?> GoToAsync(string path) =>
        page.GotoAsync(new Uri(site, path).AbsoluteUri);

    public Task FillAsync(string label, string value) =>
        page.GetByLabel(label, new() { Exact = true }).FillAsync(value);

    public Task ChooseAsync(string label, string value) =>
        page.GetByLabel(label, new() { Exact = true }).SelectOptionAsync(value);

    public Task PressAsync(string button) =>
        page.GetByRole(AriaRole.Button, new() { Name = button, Exact = true }).ClickAsync();

    public Task FollowAsync(string link) =>
        page.GetByRole(AriaRole.Link, new() { Name = link, Exact = true }).First.ClickAsync();

    public Task SeesAsync(string text) => page.GetByText(text).First.WaitForAsync();

    public async Task SignAsync(string button)
    {
        await FillAsync("Your password", DemoPeople.Password);
        await PressAsync(button);
    }

    public async Task<byte[]> DownloadAsync(string path)
    {
        var response = await context.APIRequest.GetAsync(new Uri(site, path).AbsoluteUri);
        Assert.Equal(200, response.Status);
        return await response.BodyAsync();
    }

    public async Task<int> StatusAsync(string path) =>
        (
            await context.APIRequest.GetAsync(
                new Uri(site, path).AbsoluteUri,
                new() { MaxRedirects = 0 }
            )
        ).Status;

    public ValueTask DisposeAsync() => context.DisposeAsync();
}
