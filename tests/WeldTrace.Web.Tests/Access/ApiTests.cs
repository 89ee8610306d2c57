using System.Net;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Access;
using WeldTrace.Domain.People;
using WeldTrace.Engineering.Conformity;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Systems;
using WeldTrace.Web.Tests.Features;
using WeldTrace.Web.Tests.Features.Testing;

namespace WeldTrace.Web.Tests.Access;

/// <summary>Other systems send and read over HTTP, each with its own token: the ladder of <see cref="SampleDesigns"/> begins with 12 bar for 600 s.</summary>
public sealed class ApiTests(PostgresServerFixture server)
{
    private static readonly string Hold = BenchCsv.Of(900, 1, t => t < 120 ? t / 10 : 12, _ => 20);

    private static readonly string Proof = BenchCsv.Of(900, 1, t => Math.Min(t / 10, 18), _ => 20);

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task EachAddress_AskedWithEachToken_AnswersOnlyItsOwn()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 40);
        Accept.All(await BenchCsv.BeginAsync(vessel));
        await using var site = new RunningSite(vessel.Site);
        using var admin = await AdministratorAsync(vessel, site);
        using var pushing = await TokenAsync(site, admin, TokenScope.PushBenchReadings);
        using var reading = await TokenAsync(site, admin, TokenScope.ReadHistories);
        using var machine = await MachineTokenAsync(site, admin, vessel);
        using var wrong = Client(site, new string('a', 64));
        using var nobody = Client(site, null);
        (HttpClient Client, int State, int History, int Readings, int Log)[] table =
        [
            (nobody, 401, 401, 401, 401),
            (wrong, 401, 401, 401, 401),
            (machine, 401, 401, 401, 201),
            (reading, 200, 200, 403, 401),
            (pushing, 403, 403, 200, 401),
        ];

        foreach (var (client, state, history, readings, log) in table)
        {
            var answers = new[]
            {
                await client.GetAsync($"/api/vessels/{vessel.Serial}", Cancellation),
                await client.GetAsync($"/api/vessels/{vessel.Serial}/history", Cancellation),
                await PushAsync(client, vessel.Serial, 40, 1, Hold),
                await client.PostAsync(
                    $"/equipment/machines/{vessel.Shop.Machine.Id:D}/logs?name=a.csv&length=9&sha256={new string('b', 64)}",
                    null,
                    Cancellation
                ),
            };
            Assert.Equal([state, history, readings, log], answers.Select(a => (int)a.StatusCode));
            foreach (var refused in answers.Where(a => !a.IsSuccessStatusCode))
            {
                Assert.NotEmpty(await DetailAsync(refused));
            }
        }
    }

    [Fact]
    public async Task Readings_OfAStage_AreRecordedOnce_UnderTheNameOfTheSystem()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 40);
        await using var site = new RunningSite(vessel.Site);
        using var admin = await AdministratorAsync(vessel, site);
        using var bench = await TokenAsync(site, admin, TokenScope.PushBenchReadings);

        await RefusedAsync(HttpStatusCode.Conflict, 40, 1, Hold, "No pressure test");
        Accept.All(await BenchCsv.BeginAsync(vessel));
        await RefusedAsync(HttpStatusCode.Conflict, 40, 3, Proof, "comes next");
        await RefusedAsync(HttpStatusCode.UnprocessableEntity, 40, null, Hold, "Name the stage");
        await RefusedAsync(HttpStatusCode.UnprocessableEntity, 40, 1, "no log at all", "");
        await RefusedAsync(HttpStatusCode.NotFound, 45, 1, Hold, "no vessel");
        await RefusedAsync(HttpStatusCode.Conflict, 30, null, Hold, "");
        await RefusedAsync(HttpStatusCode.Conflict, 60, null, Hold, "takes no such readings");
        foreach (var _ in Enumerable.Range(0, 2))
        {
            var answer = await PushAsync(bench, vessel.Serial, 40, 1, Hold);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            Assert.Equal("pass", (await JsonAsync(answer)).GetProperty("verdict").GetString());
        }

        var test = await vessel.Site.Database.ReadAsync(db => db.PressureTests.SingleAsync());
        var stage = Assert.Single(test.Stages);
        Assert.Equal(
            (Verdict.Pass, "Bench computer (system)", "hold.csv", 900),
            (stage.Verdict, stage.By, stage.Reading.Log!.FileName, stage.Reading.Log.Samples)
        );
        Assert.Equal(2, await vessel.Site.EntriesAsync(test.Id));
        Assert.Empty(await vessel.LedgerProblemsAsync());

        async Task RefusedAsync(
            HttpStatusCode status,
            int step,
            int? number,
            string csv,
            string words
        )
        {
            var answer = await PushAsync(bench, vessel.Serial, step, number, csv);
            Assert.Equal(status, answer.StatusCode);
            Assert.Contains(words, await DetailAsync(answer), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Readings_OfALeakTest_WaitUntilTheInspectorTakesThem()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 30);
        await using var site = new RunningSite(vessel.Site);
        using var admin = await AdministratorAsync(vessel, site);
        using var bench = await TokenAsync(site, admin, TokenScope.PushBenchReadings);
        var decay = BenchCsv.Of(1441, 60, _ => 2, _ => 20);

        var pushed = await PushAsync(bench, vessel.Serial, 30, null, decay);
        Assert.Equal(HttpStatusCode.OK, pushed.StatusCode);
        using var inspector = await site.SignInAsync(vessel.Inspector.PrintedName);
        var address = Routes.LeakStep(vessel.Serial, 30);
        var page = await SiteVisit.PageAsync(await inspector.GetAsync(address));
        var box = page.QuerySelector("#In-Arrived");
        Assert.True(box is not null, page.Body!.TextContent);
        var answer = await inspector.PostAsync(
            address,
            "leak-test",
            [
                new("In.Arrived", box.GetAttribute("value")!),
                new("In.AtmosphericPressure", "1013"),
                new("In.GaugeUncertainty", "0.1"),
                new("In.TemperatureUncertainty", "0.01"),
                new("In.VolumeUncertaintyPercent", "1"),
                new("In.Gauge", "G-4"),
                new("In.Thermometer", "T-2"),
                new("In.CautionsRead", "true"),
                new("In.Password", WorkingSite.Password),
            ]
        );

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var test = await vessel.Site.Database.ReadAsync(db => db.LeakTests.SingleAsync());
        Assert.Equal(
            (vessel.Inspector.PrintedName, "Bench computer, hold.csv", 1441),
            (test.InspectorName, test.Decay!.Log!.FileName, test.Decay.Log.Samples)
        );
        Assert.Empty(await vessel.LedgerProblemsAsync());
        var again = await PushAsync(bench, vessel.Serial, 30, null, decay);
        Assert.Equal(HttpStatusCode.Conflict, again.StatusCode);
    }

    [Fact]
    public async Task History_HoldsTheRecordsOfTheVessel_AndTheirProofs()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 40);
        await using var site = new RunningSite(vessel.Site);
        using var admin = await AdministratorAsync(vessel, site);
        using var office = await TokenAsync(site, admin, TokenScope.ReadHistories);

        var state = await JsonAsync(
            await office.GetAsync($"/api/vessels/{vessel.Serial}", Cancellation)
        );
        var history = await JsonAsync(
            await office.GetAsync($"/api/vessels/{vessel.Serial}/history", Cancellation)
        );
        var none = await office.GetAsync("/api/vessels/NONE-1", Cancellation);

        Assert.Equal(40, state.GetProperty("nextStep").GetProperty("number").GetInt32());
        Assert.Contains(
            vessel.Serial,
            history.GetProperty("records").EnumerateArray().Select(Serial)
        );
        Assert.All(
            history.GetProperty("entries").EnumerateArray(),
            e => Assert.NotEmpty(e.GetProperty("path").EnumerateArray())
        );
        Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
        Assert.Contains("NONE-1", await DetailAsync(none), StringComparison.Ordinal);

        static string? Serial(JsonElement record) =>
            record.TryGetProperty("serial", out var serial) ? serial.GetString() : null;
    }

    [Fact]
    public async Task Token_PastItsEnd_OrWithdrawn_IsWorthNothing_AndStandsInTheLedger()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 40);
        await using var site = new RunningSite(vessel.Site);
        var path = $"/api/vessels/{vessel.Serial}";
        using var admin = await AdministratorAsync(vessel, site);
        using var office = await TokenAsync(site, admin, TokenScope.ReadHistories);
        using var other = await TokenAsync(site, admin, TokenScope.ReadHistories);
        var tokens = await vessel.Site.Database.ReadAsync(db =>
            db.SystemTokens.OrderBy(t => t.GivenAt).Select(t => t.Id).ToListAsync()
        );

        await admin.PostAsync(
            Routes.SystemTokens,
            "withdraw-system-token",
            [new("Out.Id", tokens[0].ToString("D")), new("Out.Reason", "Replaced")]
        );
        Assert.Equal(
            [HttpStatusCode.Unauthorized, HttpStatusCode.OK],
            [
                (await office.GetAsync(path, Cancellation)).StatusCode,
                (await other.GetAsync(path, Cancellation)).StatusCode,
            ]
        );
        vessel.Site.Clock.Advance(TimeSpan.FromDays(31));

        Assert.Equal(
            HttpStatusCode.Unauthorized,
            (await other.GetAsync(path, Cancellation)).StatusCode
        );
        Assert.Equal(2, await vessel.Site.EntriesAsync(tokens[0]));
        Assert.Empty(await vessel.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Token_ThatAsksTooOften_IsHeldUp_AndAnotherIsNot()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 40);
        await using var site = new RunningSite(vessel.Site);
        using var admin = await AdministratorAsync(vessel, site);
        using var office = await TokenAsync(site, admin, TokenScope.ReadHistories);
        using var other = await TokenAsync(site, admin, TokenScope.ReadHistories);

        List<HttpStatusCode> answers = [];
        for (var i = 0; i < 2 * ApiLimit.MostPerMinute; i++)
        {
            answers.Add((await office.GetAsync("/api/vessels/NONE-1", Cancellation)).StatusCode);
        }

        // The window of a minute may end on the way.
        Assert.InRange(
            answers.Count(a => a == HttpStatusCode.NotFound),
            ApiLimit.MostPerMinute,
            (2 * ApiLimit.MostPerMinute) - 1
        );
        var held = await office.GetAsync("/api/vessels/NONE-1", Cancellation);
        Assert.Equal(HttpStatusCode.TooManyRequests, held.StatusCode);
        Assert.Equal("60", held.Headers.RetryAfter?.ToString());
        Assert.Equal(
            HttpStatusCode.NotFound,
            (await other.GetAsync("/api/vessels/NONE-1", Cancellation)).StatusCode
        );
    }

    [Fact]
    public async Task Document_DescribesEveryAddressForSystems()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 40);
        await using var site = new RunningSite(vessel.Site);
        using var visit = await site.SignInAsync(vessel.Engineer.PrintedName);

        var document = await JsonAsync(await visit.GetAsync(Routes.OpenApi));

        Assert.Equal(
            [
                "/api/vessels/{serial}",
                "/api/vessels/{serial}/history",
                "/api/vessels/{serial}/steps/{sequence}/readings",
                "/equipment/machines/{id}/logs",
                "/equipment/machines/{id}/logs/{arrival}",
                "/equipment/machines/{id}/logs/{arrival}/pieces",
            ],
            document.GetProperty("paths").EnumerateObject().Select(p => p.Name).Order()
        );
        Assert.StartsWith("3.", document.GetProperty("openapi").GetString(), StringComparison.Ordinal);
    }

    private static async Task<SiteVisit> AdministratorAsync(RoutedVessel vessel, RunningSite site)
    {
        await vessel.Site.EnterAsync("Ada Voss", Role.Administrator);
        return await site.SignInAsync("Ada Voss");
    }

    private static async Task<HttpClient> TokenAsync(
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

    private static async Task<HttpClient> MachineTokenAsync(
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

    private static HttpClient Client(RunningSite site, string? word)
    {
        var client = new HttpClient { BaseAddress = site.Address };
        if (word is not null)
        {
            client.DefaultRequestHeaders.Authorization = new("Bearer", word);
        }

        return client;
    }

    private static Task<HttpResponseMessage> PushAsync(
        HttpClient client,
        string serial,
        int step,
        int? stage,
        string csv
    ) =>
        client.PostAsync(
            $"/api/vessels/{serial}/steps/{step}/readings?name=hold.csv{(stage is null ? "" : $"&stage={stage}")}",
            new StringContent(csv, System.Text.Encoding.UTF8, "text/csv"),
            Cancellation
        );

    private static async Task<string> DetailAsync(HttpResponseMessage answer)
    {
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        return (await JsonAsync(answer)).GetProperty("detail").GetString()!;
    }

    private static async Task<JsonElement> JsonAsync(HttpResponseMessage answer) =>
        JsonElement.Parse(await answer.Content.ReadAsStringAsync(Cancellation));
}
