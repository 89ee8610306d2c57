using System.Net;
using System.Net.Http.Headers;
using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using WeldTrace.Domain.Ledger;
using WeldTrace.Verify;
using WeldTrace.Web.Demo;
using WeldTrace.Web.Features.Trace.Histories;
using WeldTrace.Web.Tests.Access;

namespace WeldTrace.Web.Tests.Features.Trace.Histories;

/// <summary>Histories ordered, fetched in parts and checked, over HTTP from the running demonstration.</summary>
[Collection(typeof(SecondDemoSiteGroup))]
public sealed class OrderedHistoriesTests(DemoSite site)
{
    private const string First = "NR10-0001";
    private const string Second = "NR10-0004";

    [Fact]
    public async Task WholeLot_OrderedOnItsPage_IsVerifiedVesselByVessel()
    {
        var lots = await site.ReadAsync(db => db.ProductionLots.AsNoTracking().ToListAsync());
        var lot = lots.Where(l => l.Vessels.Count > 1).MinBy(l => l.Vessels.Count)!;
        var auditor = await site.VisitAsync(DemoPeople.Auditor);
        var page = await SiteVisit.PageAsync(await auditor.GetAsync(Routes.Lot(lot.Id)));
        var link = page.QuerySelector("a[href^='/histories/new']")!.GetAttribute("href")!;

        var placed = await OrderAsync(auditor, link, KeyValuePair.Create("all", "true"));
        var order = await DemoOrders.EndAsync(Orders, placed.Id, OrderState.Ready);

        var zip = await BytesAsync(await auditor.GetAsync(Routes.HistoryFile(order.Id)));
        var key = site.Services.GetRequiredService<SiteKeyFolder>().Current.Fingerprint;
        var report = CollectionVerifier.Verify(new MemoryStream(zip), key);
        Assert.Empty(report.Problems);
        Assert.True(report.IsVerified);
        Assert.Equal($"Production lot {lot.Number}", report.Contents!.Title);
        Assert.Equal(
            lot.Vessels.Select(v => v.Label).Order(StringComparer.Ordinal),
            report.Bundles.Select(b => b.VesselSerial)
        );
    }

    [Fact]
    public async Task TickedVessels_OfASearch_AndNoOthers_AreOrdered()
    {
        var auditor = await site.VisitAsync(DemoPeople.Auditor);

        var order = await OrderAsync(
            auditor,
            Routes.OrderHistories,
            KeyValuePair.Create("serial", Second),
            KeyValuePair.Create("serial", First),
            KeyValuePair.Create("serial", "NOT-OURS")
        );

        Orders.Cancel(order.Id);
        Assert.Equal([First, Second], order.Serials);
    }

    [Fact]
    public async Task NothingTicked_IsRefusedWithAReason()
    {
        var auditor = await site.VisitAsync(DemoPeople.Auditor);

        var answer = await auditor.PostAsync(Routes.OrderHistories, "order-histories", []);

        var page = await SiteVisit.PageAsync(answer);
        Assert.Contains(
            "No vessel is ticked",
            page.QuerySelector(".error-summary")!.TextContent,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task BrokenDownload_GoesOnWhereItStopped()
    {
        var order = await DemoOrders.ReadyAsync(site, "auditor", DemoOrders.Small);
        var auditor = await site.VisitAsync(DemoPeople.Auditor);
        var path = Routes.HistoryFile(order.Id);
        var whole = await auditor.GetAsync(path);
        var bytes = await BytesAsync(whole);
        var tag = whole.Headers.ETag!;

        var start = await PartAsync(auditor, path, 0, 999, null);
        var rest = await PartAsync(auditor, path, 1000, null, tag.Tag);

        Assert.Equal("bytes", Assert.Single(whole.Headers.AcceptRanges));
        Assert.Equal(order.Bytes, bytes.Length);
        Assert.Equal($"\"{Convert.ToHexStringLower(SHA256.HashData(bytes))}\"", tag.Tag);
        Assert.Equal(HttpStatusCode.PartialContent, start.StatusCode);
        Assert.Equal(HttpStatusCode.PartialContent, rest.StatusCode);
        Assert.Equal(bytes.Length, rest.Content.Headers.ContentRange!.Length);
        byte[] joined = [.. await BytesAsync(start), .. await BytesAsync(rest)];
        Assert.Equal(bytes, joined);
    }

    [Fact]
    public async Task ChangedFile_IsSentWholeAgain()
    {
        var before = await DemoOrders.ReadyAsync(site, "engineer", DemoOrders.Small);
        var after = await DemoOrders.ReadyAsync(site, "auditor", DemoOrders.Small);
        var auditor = await site.VisitAsync(DemoPeople.Auditor);

        // The rest of the one, asked for as the rest of the other.
        var answer = await PartAsync(
            auditor,
            Routes.HistoryFile(after.Id),
            1000,
            null,
            $"\"{before.Sha256}\""
        );

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var bytes = await BytesAsync(answer);
        Assert.Equal(after.Sha256, Convert.ToHexStringLower(SHA256.HashData(bytes)));
        var beyond = await PartAsync(
            auditor,
            Routes.HistoryFile(after.Id),
            after.Bytes,
            null,
            null
        );
        Assert.Equal(HttpStatusCode.RequestedRangeNotSatisfiable, beyond.StatusCode);
    }

    [Fact]
    public async Task OthersOrder_IsClosedToOtherRoles_AndTheirFormsChangeNothing()
    {
        var order = await DemoOrders.ReadyAsync(site, "engineer", DemoOrders.Small);
        var page = Routes.HistoryOrder(order.Id);

        foreach (var person in DemoPeople.All.Where(p => p.SignInName != "engineer"))
        {
            var visit = await site.VisitAsync(person);
            var may = person.SignInName is "quality" or "admin";
            foreach (var path in (string[])[page, Routes.HistoryFile(order.Id)])
            {
                var answer = await visit.GetAsync(path);
                Assert.Equal(may ? HttpStatusCode.OK : HttpStatusCode.Redirect, answer.StatusCode);
            }

            var listed = await SiteVisit.PageAsync(await visit.GetAsync(Routes.Histories));
            Assert.Equal(may, listed.QuerySelector($"a[href='{page}']") is not null);
            if (!may)
            {
                await visit.PostAsync(page, "delete-order", []);
                Assert.Equal(OrderState.Ready, Orders.Find(order.Id)!.State);
            }
        }
    }

    [Fact]
    public async Task DeletedFile_IsGone_AndCanBeOrderedAgain()
    {
        var order = await DemoOrders.AnewAsync(site, "auditor", DemoOrders.Small);
        var auditor = await site.VisitAsync(DemoPeople.Auditor);
        var page = Routes.HistoryOrder(order.Id);

        await auditor.PostAsync(page, "delete-order", []);

        var file = await auditor.GetAsync(Routes.HistoryFile(order.Id));
        Assert.Equal(HttpStatusCode.NotFound, file.StatusCode);
        Assert.Equal(["order.json"], FilesOf(order));
        var again = await auditor.PostAsync(page, "order-again", []);
        Assert.NotEqual(order.Id, IdIn(again));
        Assert.Equal(order.Serials, Orders.Find(IdIn(again))!.Serials);
        Orders.Cancel(IdIn(again));
    }

    [Fact]
    public async Task Cancelled_WhileMadeOrWaiting_LeavesNothing()
    {
        var actor = await DemoOrders.ActorAsync(site, "auditor");
        var auditor = await site.VisitAsync(DemoPeople.Auditor);
        // All vessels, the small one first: the making is begun soon and lasts long after both are cancelled.
        string[] many =
        [
            DemoOrders.Small,
            .. await site.ReadAsync(db =>
                db.Vessels.Where(v => v.Serial != DemoOrders.Small)
                    .OrderBy(v => v.Serial)
                    .Select(v => v.Serial)
                    .ToListAsync()
            ),
        ];
        var made = Orders.Place("Many", many, site.Address, actor).Value!;
        var waiting = Orders.Place("Few", [First], site.Address, actor).Value!;
        while (Orders.Find(made.Id)!.Done == 0)
        {
            await Task.Delay(10, TestContext.Current.CancellationToken);
        }

        foreach (var order in (HistoryOrder[])[waiting, made])
        {
            await auditor.PostAsync(Routes.HistoryOrder(order.Id), "cancel-order", []);
        }

        // The line goes on behind them.
        await DemoOrders.AnewAsync(site, "auditor", DemoOrders.Small);
        foreach (var order in (HistoryOrder[])[waiting, made])
        {
            Assert.Equal(OrderState.Cancelled, Orders.Find(order.Id)!.State);
            Assert.Equal(["order.json"], FilesOf(order));
            var file = await auditor.GetAsync(Routes.HistoryFile(order.Id));
            Assert.Equal(HttpStatusCode.NotFound, file.StatusCode);
        }
    }

    private HistoryOrders Orders => site.Services.GetRequiredService<HistoryOrders>();

    private IEnumerable<string?> FilesOf(HistoryOrder order) =>
        Directory
            .EnumerateFiles(Path.Combine(site.Folder, "histories", order.Id.ToString("N")))
            .Select(Path.GetFileName);

    private async Task<HistoryOrder> OrderAsync(
        SiteVisit visit,
        string path,
        params IReadOnlyList<KeyValuePair<string, string>> fields
    )
    {
        var answer = await visit.PostAsync(path, "order-histories", fields);
        return Orders.Find(IdIn(answer))!;
    }

    private static Guid IdIn(HttpResponseMessage answer) =>
        Guid.Parse(answer.Headers.Location!.ToString().Split('/')[^1]);

    private static Task<byte[]> BytesAsync(HttpResponseMessage answer) =>
        answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken);

    private static async Task<HttpResponseMessage> PartAsync(
        SiteVisit visit,
        string path,
        long from,
        long? to,
        string? tag
    )
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, new Uri(path, UriKind.Relative));
        request.Headers.Range = new RangeHeaderValue(from, to);
        if (tag is not null)
        {
            request.Headers.IfRange = new RangeConditionHeaderValue(tag);
        }

        return await visit.SendAsync(request);
    }
}
