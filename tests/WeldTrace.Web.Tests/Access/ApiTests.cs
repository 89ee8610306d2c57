using System.Net;
using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Access;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Systems.Histories;
using WeldTrace.Web.Systems;
using WeldTrace.Web.Tests.Features;
using WeldTrace.Web.Tests.Features.Testing;
using WeldTrace.Web.Tests.Features.Vessels;
using static WeldTrace.Web.Tests.Access.ApiClients;

namespace WeldTrace.Web.Tests.Access;

/// <summary>Other systems send and read over HTTP, each with its own token: the ladder of <see cref="SampleDesigns"/> begins with 12 bar for 600 s.</summary>
public sealed class ApiTests(PostgresServerFixture server)
{
    private static readonly string Hold = BenchCsv.Of(900, 1, t => t < 120 ? t / 10 : 12, _ => 20);

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
                await PushStageAsync(client, vessel.Serial, 40, 1, Hold),
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
        BundleSchemaTests.AssertKeeps(
            JsonNode.Parse(history.GetRawText())!,
            "history",
            HistoryReader.Format
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

        var document = await JsonAsync(await visit.GetAsync(ApiDocument.Address));

        Assert.Equal(
            [
                "/api/vessels/{serial}",
                "/api/vessels/{serial}/history",
                "/api/vessels/{serial}/leak/{sequence}/readings",
                "/api/vessels/{serial}/pressure/{sequence}/stages/{stage}",
                "/equipment/machines/{id}/logs",
                "/equipment/machines/{id}/logs/{arrival}",
                "/equipment/machines/{id}/logs/{arrival}/pieces",
            ],
            document.GetProperty("paths").EnumerateObject().Select(p => p.Name).Order()
        );
        Assert.StartsWith(
            "3.",
            document.GetProperty("openapi").GetString(),
            StringComparison.Ordinal
        );
    }
}
