using System.Text.Json;
using WeldTrace.Domain.Access;
using WeldTrace.Domain.People;
using WeldTrace.Web.Tests.Features;

namespace WeldTrace.Web.Tests.Access;

/// <summary>Other systems that ask a running site, and the administrator who gives them tokens.</summary>
internal static class ApiClients
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public static async Task<SiteVisit> AdministratorAsync(RoutedVessel vessel, RunningSite site)
    {
        await vessel.Site.EnterAsync("Ada Voss", Role.Administrator);
        return await site.SignInAsync("Ada Voss");
    }

    public static async Task<HttpClient> TokenAsync(
        RunningSite site,
        SiteVisit admin,
        TokenScope scope
    ) =>
        Client(
            site,
            await WordAsync(
                await admin.PostAsync(
                    Routes.SystemTokens,
                    "give-system-token",
                    [
                        new("In.SystemName", "Bench computer"),
                        new("In.Scope", scope.ToString()),
                        new("In.Days", "30"),
                    ]
                )
            )
        );

    public static async Task<HttpClient> MachineTokenAsync(
        RunningSite site,
        SiteVisit admin,
        RoutedVessel vessel
    ) =>
        Client(
            site,
            await WordAsync(
                await admin.PostAsync(
                    Routes.PushLogs(vessel.Shop.Machine.Id),
                    "give-log-token",
                    [new("In.Label", "Machine"), new("In.Days", "30")]
                )
            )
        );

    private static async Task<string> WordAsync(HttpResponseMessage answer) =>
        (await SiteVisit.PageAsync(answer)).QuerySelector("code.hash")!.TextContent;

    public static HttpClient Client(RunningSite site, string? word)
    {
        var client = new HttpClient { BaseAddress = site.Address };
        if (word is not null)
        {
            client.DefaultRequestHeaders.Authorization = new("Bearer", word);
        }

        return client;
    }

    public static Task<HttpResponseMessage> PushStageAsync(
        HttpClient client,
        string serial,
        int step,
        int stage,
        string csv
    ) => PushAsync(client, $"/api/vessels/{serial}/pressure/{step}/stages/{stage}", csv);

    public static Task<HttpResponseMessage> PushDecayAsync(
        HttpClient client,
        string serial,
        int step,
        string csv
    ) => PushAsync(client, $"/api/vessels/{serial}/leak/{step}/readings", csv);

    private static Task<HttpResponseMessage> PushAsync(
        HttpClient client,
        string address,
        string csv
    ) =>
        client.PostAsync(
            address + "?name=hold.csv",
            new StringContent(csv, System.Text.Encoding.UTF8, "text/csv"),
            Cancellation
        );

    public static async Task<string> DetailAsync(HttpResponseMessage answer)
    {
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        return (await JsonAsync(answer)).GetProperty("detail").GetString()!;
    }

    public static async Task<JsonElement> JsonAsync(HttpResponseMessage answer) =>
        JsonElement.Parse(await answer.Content.ReadAsStringAsync(Cancellation));
}
