using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using WeldTrace.TestSupport.Database;
using WeldTrace.Web.Demo;

namespace WeldTrace.Benchmarks.Pages;

/// <summary>The whole application with its invented workshop, on a private PostgreSQL, and the auditor signed in.</summary>
internal sealed partial class DemoSite : WebApplicationFactory<Program>
{
    private readonly TestFolder _folder = new();

    public static DemoSite Start() => new();

    public Task<HttpClient> SignInAsync() => SignInAsync(DemoPeople.Auditor);

    /// <summary>The token by which a page's form is sent.</summary>
    public static string TokenOf(string page) => Token().Match(page).Groups[1].Value;

    public async Task<HttpClient> SignInAsync(DemoPerson person)
    {
        var client = CreateClient();
        var page = await client.GetStringAsync(new Uri("/sign-in", UriKind.Relative));
        using var form = new FormUrlEncodedContent([
            new("_handler", "sign-in"),
            new("__RequestVerificationToken", TokenOf(page)),
            new("In.Name", person.SignInName),
            new("In.Password", DemoPeople.Password),
        ]);
        using var answer = await client.PostAsync(new Uri("/sign-in", UriKind.Relative), form);
        answer.EnsureSuccessStatusCode();
        return client;
    }

    public override async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        _folder.Dispose();
    }

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        builder.UseContentRoot(AppContext.BaseDirectory);
        builder.UseSetting("Database:Folder", _folder.Path);
        builder.UseSetting("Demo", "true");
        builder.UseSetting("Logging:LogLevel:Default", "Warning");
        builder.UseEnvironment("Testing");
    }

    [GeneratedRegex("name=\"__RequestVerificationToken\"[^>]* value=\"([^\"]+)\"")]
    private static partial Regex Token();
}
