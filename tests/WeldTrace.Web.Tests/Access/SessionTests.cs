using System.Net;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.People;
using WeldTrace.Persistence.Accounts;
using WeldTrace.TestSupport.Database;
using WeldTrace.Web.Security;
using WeldTrace.Web.Tests.Features;

namespace WeldTrace.Web.Tests.Access;

/// <summary>Sessions in the database, over HTTP: what ends them, what survives a restart, and the page that lists them.</summary>
public sealed class SessionTests(PostgresServerFixture server)
{
    private const string Ada = "Ada Voss";
    private const string Bo = "Bo Lind";

    /// <summary>OWASP ASVS 5.0, 7.4.1: what was ended stays ended, and what was not goes on.</summary>
    [Fact]
    public async Task Session_EndedBeforeARestart_StaysEnded_AndAnotherGoesOn()
    {
        await using var works = await WorkingSite.OpenAsync(server);
        await works.EnterAsync(Ada, Role.Operator);
        using var folder = new TestFolder();
        CookieCollection ended;
        CookieCollection open;
        await using (var before = new RunningSite(works, folder.Path))
        {
            using var left = await before.SignInAsync(Ada);
            ended = left.Cookies.GetAllCookies();
            using var copy = Copy(before, ended);
            Assert.True(await IsInAsync(copy));
            await left.PostAsync(Routes.SignOut, form: null, []);
            Assert.False(await IsInAsync(copy));
            using var stays = await before.SignInAsync(Ada);
            open = stays.Cookies.GetAllCookies();
        }

        await using var after = new RunningSite(works, folder.Path);
        using var thief = Copy(after, ended);
        using var owner = Copy(after, open);
        Assert.False(await IsInAsync(thief));
        Assert.True(await IsInAsync(owner));
    }

    [Fact]
    public async Task List_ShowsOwnSessionsOnly_AndEndsOne_WithThePassword()
    {
        await using var works = await WorkingSite.OpenAsync(server);
        await works.EnterAsync(Ada, Role.Operator);
        await works.EnterAsync(Bo, Role.Operator);
        await using var site = new RunningSite(works);
        using var here = await site.SignInAsync(Ada);
        using var there = await site.SignInAsync(Ada);
        using var bo = await site.SignInAsync(Bo);
        var ids = await works.Database.ReadAsync(db =>
            db.AccountSessions.OrderBy(s => s.BegunAt).Select(s => s.Id).ToListAsync()
        );

        var page = await SiteVisit.PageAsync(await here.GetAsync(Routes.Sessions));
        Assert.Equal(2, page.QuerySelectorAll("tbody tr").Length);
        var offered = page.QuerySelectorAll("option").Select(o => o.GetAttribute("value")).ToList();
        Assert.Equal(2, offered.Count);

        await EndAsync(here, offered[1]!, "not the password at all");
        Assert.True(await IsInAsync(there));
        await EndAsync(here, offered[1]!);
        Assert.False(await IsInAsync(there));
        Assert.True(await IsInAsync(here));

        foreach (var id in ids)
        {
            await EndAsync(here, id.ToString("D"));
        }

        Assert.True(await IsInAsync(bo));
    }

    [Fact]
    public async Task AllOthers_End_AndThisOneGoesOn()
    {
        await using var works = await WorkingSite.OpenAsync(server);
        await works.EnterAsync(Ada, Role.Operator);
        await works.EnterAsync(Bo, Role.Operator);
        await using var site = new RunningSite(works);
        using var first = await site.SignInAsync(Ada);
        using var second = await site.SignInAsync(Ada);
        using var here = await site.SignInAsync(Ada);
        using var bo = await site.SignInAsync(Bo);

        await EndAsync(here, "others");

        Assert.Equal(
            (false, false, true, true),
            (
                await IsInAsync(first),
                await IsInAsync(second),
                await IsInAsync(here),
                await IsInAsync(bo)
            )
        );
        var text = (await SiteVisit.PageAsync(await here.GetAsync(Routes.Sessions)))
            .Body!
            .TextContent;
        Assert.Contains("ended by you", text, StringComparison.Ordinal);
        Assert.Contains("on this device only", text, StringComparison.Ordinal);
    }

    /// <summary>OWASP ASVS 5.0, 7.4.5: the administrator ends them, with a reason in the ledger; nobody else does.</summary>
    [Fact]
    public async Task Administrator_EndsAllSessionsOfAPerson_InTheLedger()
    {
        await using var works = await WorkingSite.OpenAsync(server);
        var ada = await works.EnterAsync(Ada, Role.Operator);
        await works.EnterAsync(Bo, Role.Administrator);
        await works.EnterAsync("Quentin Hale", Role.QualityManager);
        await using var site = new RunningSite(works);
        using var person = await site.SignInAsync(Ada);
        using var quality = await site.SignInAsync("Quentin Hale");
        using var admin = await site.SignInAsync(Bo);
        var entries = await works.EntriesAsync(ada.PersonId);

        await EndAsync(quality);
        Assert.True(await IsInAsync(person));
        await EndAsync(admin);
        Assert.False(await IsInAsync(person));
        Assert.True(await IsInAsync(admin));

        Assert.Equal(entries + 1, await works.EntriesAsync(ada.PersonId));
        Assert.Empty(await works.LedgerProblemsAsync());
        using var again = await site.SignInAsync(Ada);
        Assert.True(await IsInAsync(again));

        Task<HttpResponseMessage> EndAsync(SiteVisit by) =>
            by.PostAsync(
                Routes.Person(ada.PersonId),
                "end-sessions",
                [new("End.Reason", "The tablet is lost")]
            );
    }

    /// <summary>When it was last seen is written coarsely, and a row goes 30 days after its session began.</summary>
    [Fact]
    public async Task Row_IsSeenCoarsely_KeepsNoUserAgent_AndIsForgotten()
    {
        await using var works = await WorkingSite.OpenAsync(server);
        await works.EnterAsync(Ada, Role.Operator);
        await using var site = new RunningSite(works);
        using var visit = await site.SignInAsync(Ada);
        var begun = works.Clock.GetUtcNow();

        works.Clock.Advance(TimeSpan.FromMinutes(4));
        await IsInAsync(visit);
        Assert.Equal(begun, (await RowAsync()).LastSeenAt);
        works.Clock.Advance(TimeSpan.FromMinutes(1));
        await IsInAsync(visit);
        Assert.Equal(begun.AddMinutes(5), (await RowAsync()).LastSeenAt);
        Assert.Equal("device that does not say what it is", (await RowAsync()).Device);

        works.Clock.Advance(TimeSpan.FromDays(31));
        using var later = await site.SignInAsync(Ada);
        Assert.Equal(works.Clock.GetUtcNow(), (await RowAsync()).BegunAt);

        Task<AccountSession> RowAsync() =>
            works.Database.ReadAsync(db => db.AccountSessions.SingleAsync());
    }

    /// <summary>NIST SP 800-63B 4.2.3: twelve hours, however busy, and half an hour without a page.</summary>
    [Theory]
    [InlineData(719, 719, SessionState.Open)]
    [InlineData(721, 721, SessionState.RanOut)]
    [InlineData(100, 65, SessionState.Open)]
    [InlineData(100, 64, SessionState.RanOut)]
    public void Session_IsGood_ForItsTime(int minutes, int seen, SessionState expected)
    {
        var start = new DateTimeOffset(2031, 5, 20, 6, 0, 0, TimeSpan.Zero);
        var session = Begun(start);
        session.LastSeenAt = start.AddMinutes(seen);

        Assert.Equal(expected, session.StateAt(start.AddMinutes(minutes)));
    }

    [Fact]
    public void Session_ThatWasEnded_KeepsItsFirstReason()
    {
        var start = new DateTimeOffset(2031, 5, 20, 6, 0, 0, TimeSpan.Zero);
        var session = Begun(start);

        session.End(SessionEnd.SignedOut, start.AddMinutes(1));
        session.End(SessionEnd.Administrator, start.AddMinutes(2));

        Assert.Equal(SessionState.Ended, session.StateAt(start.AddMinutes(1)));
        Assert.Equal(
            (SessionEnd.SignedOut, start.AddMinutes(1)),
            (session.EndedBecause, session.EndedAt)
        );
    }

    [Theory]
    [InlineData("", "device that does not say what it is")]
    [InlineData(
        "Mozilla/5.0 (Windows NT 10.0; Win64; x64; rv:140.0) Gecko/20100101 Firefox/140.0",
        "Windows computer, Firefox"
    )]
    [InlineData(
        "Mozilla/5.0 (Linux; Android 15; SM-X210) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/140.0.0.0 Safari/537.36",
        "Android tablet, Chrome"
    )]
    [InlineData(
        "Mozilla/5.0 (Linux; Android 15) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/140.0.0.0 Mobile Safari/537.36",
        "Android phone, Chrome"
    )]
    [InlineData(
        "Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15_7) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/18.1 Safari/605.1.15",
        "Mac or iPad, Safari"
    )]
    [InlineData("<script>alert(1)</script> X11; Linux", "Linux computer")]
    public void Device_IsSaidInPlainWords(string userAgent, string expected) =>
        Assert.Equal(expected, DeviceWords.Of(userAgent));

    private static AccountSession Begun(DateTimeOffset at) =>
        new()
        {
            Id = Guid.CreateVersion7(at),
            AccountId = Guid.CreateVersion7(at),
            Way = SignInWay.Password,
            Device = "Android tablet",
            BegunAt = at,
            LastSeenAt = at,
        };

    private static SiteVisit Copy(RunningSite site, CookieCollection cookies)
    {
        var copy = new SiteVisit(site.Address);
        copy.Cookies.Add(cookies);
        return copy;
    }

    private static async Task<bool> IsInAsync(SiteVisit visit) =>
        (await visit.GetAsync(Routes.Me)).StatusCode == HttpStatusCode.OK;

    private static Task<HttpResponseMessage> EndAsync(
        SiteVisit visit,
        string which,
        string password = WorkingSite.Password
    ) =>
        visit.PostAsync(
            Routes.Sessions,
            "end-session",
            [new("In.Which", which), new("In.Password", password)]
        );
}
