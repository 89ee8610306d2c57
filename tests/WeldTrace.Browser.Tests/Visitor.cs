using Microsoft.Playwright;
using WeldTrace.Browser.Tests.Accessibility;
using WeldTrace.Web.Demo;

namespace WeldTrace.Browser.Tests;

/// <summary>A person at a browser of their own.</summary>
internal sealed class Visitor(IBrowserContext context, IPage page, Uri site) : IAsyncDisposable
{
    private string _name = "";

    public IPage Page { get; private set; } = page;

    public static Task<Visitor> SignInAsync(
        SiteFixture site,
        DemoPerson person,
        int width = 1280
    ) => SignInAsync(site.Browser, site.Address, person, width);

    public static async Task<Visitor> SignInAsync(
        IBrowser browser,
        Uri address,
        DemoPerson person,
        int width = 1280
    )
    {
        var visitor = await OpenAsync(browser, address, width);
        await visitor.GoToAsync("/sign-in");
        await visitor.SignInAsync(person.SignInName, DemoPeople.Password);
        await visitor.Page.LeavesAsync("**sign-in**");
        return visitor;
    }

    /// <summary>A browser window at an address, signed in to nothing.</summary>
    public static async Task<Visitor> OpenAsync(IBrowser browser, Uri address, int width = 1280)
    {
        var context = await browser.NewContextAsync(
            new()
            {
                ViewportSize = new() { Width = width, Height = 1180 },
                AcceptDownloads = true,
            }
        );
        context.SetDefaultTimeout(30_000);
        context.SetDefaultNavigationTimeout(60_000);
        return new Visitor(context, await context.NewPageAsync(), address);
    }

    public async Task SignInAsync(string name, string password)
    {
        _name = name;
        await FillAsync("Sign-in name", name);
        await FillAsync("Password", password);
        await PressAsync("Sign in");
    }

    /// <summary>Closes the tab and opens another.</summary>
    public async Task NewTabAsync()
    {
        await Page.CloseAsync();
        Page = await context.NewPageAsync();
    }

    public Task<IResponse?> GoToAsync(string path) =>
        Page.GotoAsync(new Uri(site, path).AbsoluteUri);

    public Task FillAsync(string label, string value) =>
        OrTellAsync(
            $"The field '{label}'",
            Page.GetByLabel(label, new() { Exact = true }).FillAsync(value)
        );

    public Task ChooseAsync(string label, string value) =>
        OrTellAsync(
            $"The choice '{label}'",
            Page.GetByLabel(label, new() { Exact = true }).SelectOptionAsync(value)
        );

    public Task PressAsync(string button) =>
        OrTellAsync(
            $"The button '{button}'",
            Page.GetByRole(AriaRole.Button, new() { Name = button, Exact = true }).ClickAsync()
        );

    public Task FollowAsync(string link) =>
        OrTellAsync(
            $"The link '{link}'",
            Page.GetByRole(AriaRole.Link, new() { Name = link, Exact = true }).First.ClickAsync()
        );

    /// <summary>Nothing in the page as it stands breaks WCAG 2.2 AA, as far as axe can tell.</summary>
    public async Task FindsAccessibleAsync() => Assert.Empty(await AxeScan.ViolationsAsync(Page));

    public Task SeesAsync(string text) =>
        OrTellAsync($"'{text}'", Page.GetByText(text).First.WaitForAsync());

    // Whoever reads the failure wants to know what the page said instead.
    private async Task OrTellAsync(string what, Task waiting)
    {
        try
        {
            await waiting;
        }
        catch (TimeoutException)
        {
            var said = await Page.Locator("body").InnerTextAsync();
            Assert.Fail($"{what} is not on {Page.Url}, which says:\n{said}");
        }
    }

    /// <summary>Gives the password in the form that the button sends.</summary>
    public async Task SignAsync(string button)
    {
        var sign = Page.GetByRole(AriaRole.Button, new() { Name = button, Exact = true });
        var form = Page.Locator("form").Filter(new() { Has = sign });
        await OrTellAsync(
            $"The password of '{button}'",
            form.GetByLabel("Your password", new() { Exact = true }).FillAsync(DemoPeople.Password)
        );
        await NameAsync(form);
        await PressAsync(button);
    }

    /// <summary>Gives the sign-in name where it is asked for: at the first signature.</summary>
    public Task NameAsync() => NameAsync(Page.Locator("form"));

    private async Task NameAsync(ILocator form)
    {
        var name = form.GetByLabel("Your sign-in name", new() { Exact = true });
        if (await name.CountAsync() > 0)
        {
            await name.First.FillAsync(_name);
        }
    }

    /// <summary>Signs, and waits until the form has gone because it was accepted.</summary>
    public async Task SignForGoodAsync(string button)
    {
        await SignAsync(button);
        await Page.GetByRole(AriaRole.Button, new() { Name = button, Exact = true })
            .WaitForAsync(new() { State = WaitForSelectorState.Hidden });
    }

    public async Task<byte[]> DownloadAsync(string path)
    {
        var response = await context.APIRequest.GetAsync(new Uri(site, path).AbsoluteUri);
        Assert.Equal(200, response.Status);
        return await response.BodyAsync();
    }

    /// <summary>The text of the paper of the test that is shown; its file is kept where a reader asks for it.</summary>
    public async Task<string> PaperAsync()
    {
        var bytes = await DownloadAsync(new Uri(Page.Url).AbsolutePath + "/report.pdf");
        if (Environment.GetEnvironmentVariable("WELDTRACE_KEEP_PAPERS") is { Length: > 0 } folder)
        {
            await File.WriteAllBytesAsync(
                Path.Combine(folder, $"{Guid.CreateVersion7():N}.pdf"),
                bytes
            );
        }

        return PdfText.Of(bytes);
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
