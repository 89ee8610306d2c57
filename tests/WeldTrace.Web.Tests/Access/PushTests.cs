using System.Net;
using System.Net.Http.Headers;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Web.Demo;

namespace WeldTrace.Web.Tests.Access;

/// <summary>A machine pushes a log over HTTP with its token, in pieces; the operator takes it for a run.</summary>
[Collection(typeof(DemoSiteGroup))]
public sealed class PushTests(DemoSite site)
{
    private static readonly byte[] Log = Encoding.UTF8.GetBytes(
        "t [s],Fz [kN]\n"
            + string.Concat(Enumerable.Range(0, 900).Select(i => $"{i}.0,8.{i % 10}\n"))
    );

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Push_WithItsToken_ArrivesInPieces_AndWithoutIsRefused()
    {
        var machine = (await site.ReadAsync(db => db.Machines.FirstAsync())).Id;
        var token = await TokenAsync(machine);
        using var client = new HttpClient { BaseAddress = site.Address };
        var hash = Convert.ToHexStringLower(SHA256.HashData(Log));
        var begin =
            $"/equipment/machines/{machine:D}/logs?name=run.csv&length={Log.Length}&sha256={hash}";

        Assert.Equal(
            HttpStatusCode.Unauthorized,
            (await client.PostAsync(begin, null, Cancellation)).StatusCode
        );
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue(
            "Bearer",
            token + "0"
        );
        Assert.Equal(
            HttpStatusCode.Unauthorized,
            (await client.PostAsync(begin, null, Cancellation)).StatusCode
        );
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", token);
        var announced = await client.PostAsync(begin, null, Cancellation);
        Assert.Equal(HttpStatusCode.Created, announced.StatusCode);
        var address = announced.Headers.Location!.ToString();

        Assert.Equal(
            1000,
            await OffsetAsync(
                await client.PutAsync(address + "/pieces?from=0", Piece(0, 1000), Cancellation)
            )
        );
        var misplaced = await client.PutAsync(
            address + "/pieces?from=2000",
            Piece(2000, 3000),
            Cancellation
        );
        Assert.Equal(HttpStatusCode.Conflict, misplaced.StatusCode);
        Assert.Equal(1000, await OffsetAsync(misplaced));
        Assert.Equal(1000, await OffsetAsync(await client.GetAsync(address, Cancellation)));
        var last = await client.PutAsync(
            address + "/pieces?from=1000",
            Piece(1000, Log.Length),
            Cancellation
        );
        Assert.Equal(Log.Length, await OffsetAsync(last));

        // A token opens nothing else, not even the pushing for another machine.
        var other = await site.ReadAsync(db => db.Machines.FirstAsync(m => m.Id != machine));
        var elsewhere = begin.Replace(
            machine.ToString("D"),
            other.Id.ToString("D"),
            StringComparison.Ordinal
        );
        Assert.Equal(
            HttpStatusCode.Unauthorized,
            (await client.PostAsync(elsewhere, null, Cancellation)).StatusCode
        );
        var page = await client.GetAsync(Routes.Vessels, Cancellation);
        Assert.Contains(
            Routes.SignIn,
            page.RequestMessage!.RequestUri!.ToString(),
            StringComparison.Ordinal
        );
    }

    private async Task<string> TokenAsync(Guid machine)
    {
        var visit = await site.VisitAsync(DemoPeople.All.Single(p => p.SignInName == "admin"));
        var answer = await visit.PostAsync(
            Routes.PushLogs(machine),
            "give-log-token",
            [new("In.Label", "Pushing test"), new("In.Days", "30")]
        );
        return (await SiteVisit.PageAsync(answer)).QuerySelector("code.hash")!.TextContent;
    }

    private static ByteArrayContent Piece(int from, int to) => new(Log[from..to]);

    private static async Task<long> OffsetAsync(HttpResponseMessage answer)
    {
        using var json = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(Cancellation));
        return json.RootElement.GetProperty("offset").GetInt64();
    }
}
