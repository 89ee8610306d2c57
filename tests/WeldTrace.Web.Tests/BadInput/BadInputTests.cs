using System.Net;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Roles;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Demo;
using WeldTrace.Web.Files;
using WeldTrace.Web.Tests.Access;

namespace WeldTrace.Web.Tests.BadInput;

/// <summary>What nobody should send, sent to the running site: it says what is wrong, keeps what was typed, and writes nothing.</summary>
public sealed class BadInputTests(DemoSite site) : IClassFixture<DemoSite>
{
    private const long ThreeGigabytes = 3L * 1024 * 1024 * 1024;

    [Fact]
    public async Task BringLog_ThreeGigabytes_IsRefusedUnread()
    {
        var visit = await site.VisitAsync(DemoPeople.Operator);
        var run = await EndedRunAsync();
        using var file = new AnnouncedContent(ThreeGigabytes);
        using var request = new HttpRequestMessage(HttpMethod.Post, Routes.LogUpload(run));
        request.Content = file;
        request.Headers.ExpectContinue = true;

        using var answer = await visit.SendAsync(request);

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal(0, file.BytesSent);
        var page = await SiteVisit.PageAsync(
            await visit.GetAsync(answer.Headers.Location!.ToString())
        );
        Assert.Contains(StagedLogs.TooLarge.Sentence, Said(page), StringComparison.Ordinal);
    }

    [Fact]
    public async Task TakeInSection_PhotographOf200Megapixels_IsRefusedAndTheRestKept()
    {
        var page = await RefusedAsync(
            "TakeInSection section",
            DemoPeople.Inspector,
            ("In.Photograph", SentForm.File(LargePhotograph.Png(20_000, 10_000))),
            ("In.Etchant", "Keller's reagent, 25 s")
        );

        Assert.Contains(
            "200 megapixels; at most 100 are kept",
            Said(page),
            StringComparison.Ordinal
        );
        Assert.Equal(
            "Keller's reagent, 25 s",
            page.QuerySelector("[name='In.Etchant']")!.GetAttribute("value")
        );
    }

    [Fact]
    public async Task PlanVessel_SerialThatExists_IsRefusedAtItsField()
    {
        var page = await RefusedAsync(
            "PlanVessel plan-vessel",
            DemoPeople.Engineer,
            ("In.Serial", "NR10-0001"),
            ("In.Components[0].Serial", await FreeComponentAsync("BI-1"))
        );

        Assert.Contains("This serial number exists already", Said(page), StringComparison.Ordinal);
        Assert.Equal("NR10-0001", page.QuerySelector("[name='In.Serial']")!.GetAttribute("value"));
    }

    /// <summary>The database answers as it does when its disk is full.</summary>
    [Fact]
    public async Task PlanVessel_DiskFull_SaysSoAndKeepsWhatWasTyped()
    {
        var component = await FreeComponentAsync("BI-2");
        await ExecuteAsync(
            """
            CREATE FUNCTION no_space_left() RETURNS trigger LANGUAGE plpgsql AS
            $$ BEGIN RAISE 'could not extend file: No space left on device' USING ERRCODE = '53100'; END $$;
            CREATE TRIGGER no_space_left BEFORE INSERT ON ledger_entries
            FOR EACH ROW EXECUTE FUNCTION no_space_left();
            """
        );
        try
        {
            var page = await RefusedAsync(
                "PlanVessel plan-vessel",
                DemoPeople.Engineer,
                ("In.Serial", "NR10-0977"),
                ("In.Components[0].Serial", component)
            );

            Assert.Contains("The disk of the server is full", Said(page), StringComparison.Ordinal);
            Assert.Equal(
                "NR10-0977",
                page.QuerySelector("[name='In.Serial']")!.GetAttribute("value")
            );
            Assert.False(
                await site.ReadAsync(db => db.Vessels.AnyAsync(v => v.Serial == "NR10-0977"))
            );
        }
        finally
        {
            await ExecuteAsync("DROP FUNCTION no_space_left CASCADE");
        }
    }

    /// <summary>Sends a form that is right but for some fields; it is shown again, and the ledger has grown by nothing.</summary>
    private async Task<AngleSharp.Html.Dom.IHtmlDocument> RefusedAsync(
        string form,
        DemoPerson person,
        params IReadOnlyList<(string Field, string Value)> wrong
    )
    {
        var right = FormTable.Rows.Single(r => r.Name == form);
        var row = right with
        {
            Fields = [.. right.Fields.Where(f => wrong.All(w => w.Field != f.Field)), .. wrong],
        };
        var visit = await site.VisitAsync(person);
        var path = await row.At(site);
        var fields = SentForm.Fill(await SiteVisit.PageAsync(await visit.GetAsync(path)), row)!;
        var before = await site.LedgerSizeAsync();

        var answer = await visit.PostAsync(path, row.Handler, fields);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(before, await site.LedgerSizeAsync());
        return await SiteVisit.PageAsync(answer);
    }

    /// <summary>A run whose log is still missing.</summary>
    private Task<Guid> EndedRunAsync() =>
        site.ReadAsync(async db =>
        {
            var shop = new SampleShop();
            var run = shop.Ended();
            db.AddRange(shop.Tool, shop.Procedure, shop.Design, shop.Machine, shop.Vessel, run);
            Accept.All(await db.SaveAsync(TestContext.Current.CancellationToken));
            return run.Id;
        });

    /// <summary>A vessel is planned from a component that is free.</summary>
    private Task<string> FreeComponentAsync(string serial) =>
        site.ReadAsync(async db =>
        {
            var lot = await db.MaterialLots.OrderBy(l => l.Number).FirstAsync();
            db.Add(SampleMaterial.Component(lot, serial));
            Accept.All(await db.SaveAsync(TestContext.Current.CancellationToken));
            return serial;
        });

    private static string Said(AngleSharp.Html.Dom.IHtmlDocument page) =>
        string.Join(' ', page.QuerySelectorAll("[role=alert]").Select(e => e.TextContent));

    private async Task ExecuteAsync(string statement)
    {
        var connections = site.Services.GetRequiredService<IDatabaseConnections>().Current;
        await using var owner = new NpgsqlConnection(connections.Owner);
        await owner.OpenAsync(TestContext.Current.CancellationToken);
        await using var command = new NpgsqlCommand(statement, owner);
        await command.ExecuteNonQueryAsync(TestContext.Current.CancellationToken);
    }
}
