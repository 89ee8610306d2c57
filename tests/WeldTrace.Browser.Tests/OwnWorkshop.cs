using WeldTrace.Web.Demo;

namespace WeldTrace.Browser.Tests;

/// <summary>The invented workshop for one test alone, with a clock that the test moves.</summary>
internal sealed class OwnWorkshop : IAsyncDisposable
{
    private readonly string _folder = OwnSite.NewFolder();
    private readonly SiteFixture _shared;
    private readonly OwnSite _site;

    private OwnWorkshop(SiteFixture shared)
    {
        _shared = shared;
        _site = new OwnSite(_folder, OwnSite.FreePort(), true, Clock);
    }

    public MovableClock Clock { get; } = new();

    public static async Task<OwnWorkshop> OpenAsync(SiteFixture shared)
    {
        var workshop = new OwnWorkshop(shared);
        await shared.CopyWorkshopAsync(workshop._folder);
        workshop._site.Started();
        return workshop;
    }

    public Task<Visitor> SignInAsync(DemoPerson person, int width = 1280) =>
        Visitor.SignInAsync(_shared.Browser, _site.Address, person, width);

    public async ValueTask DisposeAsync()
    {
        await _site.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }
}
