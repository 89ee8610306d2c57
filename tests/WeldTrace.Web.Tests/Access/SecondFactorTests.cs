using System.Net;
using AngleSharp.Html.Dom;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using OtpNet;
using WeldTrace.Domain.People;
using WeldTrace.TestSupport.Database;
using WeldTrace.Web.Tests.Features;

namespace WeldTrace.Web.Tests.Access;

/// <summary>An authenticator app as the second factor, over HTTP: set up, asked for, used once, given up and reset.</summary>
public sealed class SecondFactorTests(PostgresServerFixture server)
{
    private const string Name = "ada.voss";

    /// <summary>Appendix B of RFC 6238: the library and the clock give the published codes.</summary>
    [Theory]
    [InlineData(59, "94287082")]
    [InlineData(1_111_111_109, "07081804")]
    [InlineData(20_000_000_000, "65353130")]
    public void Code_IsThatOfRfc6238(long seconds, string expected) =>
        Assert.Equal(
            expected,
            new Totp("12345678901234567890"u8.ToArray(), totpSize: 8).ComputeTotp(
                DateTimeOffset.FromUnixTimeSeconds(seconds).UtcDateTime
            )
        );

    [Fact]
    public async Task Code_IsAskedForAtSignIn_AndTakenOnce()
    {
        await using var works = await WorkingSite.OpenAsync(server);
        await works.EnterAsync("Ada Voss", Role.Administrator);
        await using var site = new RunningSite(works);
        var (key, recovery) = await SetUpAsync(works, site);

        works.Clock.Advance(TimeSpan.FromMinutes(1));
        await IsRefusedAsync(site, null, "Give the code");
        await IsRefusedAsync(site, "000000", "not right");
        Assert.True(await EntersAsync(site, CodeOf(key, works)));
        await IsRefusedAsync(site, CodeOf(key, works), "used already");
        Assert.True(await EntersAsync(site, recovery[0]));
        await IsRefusedAsync(site, recovery[0], "not right");
        Assert.Equal(10, recovery.Count);
    }

    [Fact]
    public async Task Code_IsAskedForAtTheFirstSignature_OfASession()
    {
        await using var works = await WorkingSite.OpenAsync(server);
        await works.EnterAsync("Ada Voss", Role.Administrator);
        await using var site = new RunningSite(works);
        var (key, _) = await SetUpAsync(works, site);
        works.Clock.Advance(TimeSpan.FromMinutes(1));
        using var visit = new SiteVisit(site.Address);
        Assert.Equal(
            HttpStatusCode.Redirect,
            (await SendAsync(visit, CodeOf(key, works))).StatusCode
        );

        var without = await SignAsync(visit, null);
        works.Clock.Advance(TimeSpan.FromSeconds(30));
        await SignAsync(visit, CodeOf(key, works));
        await SignAsync(visit, null);

        var page = await SiteVisit.PageAsync(without);
        Assert.Contains("Give the code", page.Body!.TextContent, StringComparison.Ordinal);
        // The key of the beginning, and the two that were signed for.
        Assert.Equal(3, await works.Database.ReadAsync(db => db.SigningKeys.CountAsync()));
    }

    [Fact]
    public async Task Factor_IsGivenUpWithItsCode_OrResetByAnAdministrator_InTheLedger()
    {
        await using var works = await WorkingSite.OpenAsync(server);
        var ada = await works.EnterAsync("Ada Voss", Role.Administrator);
        await works.EnterAsync("Quentin Hale", Role.QualityManager);
        await works.EnterAsync("Bo Lind", Role.Administrator);
        await using var site = new RunningSite(works);
        await SetUpAsync(works, site);
        using var quality = await site.SignInAsync("Quentin Hale");
        using var admin = await site.SignInAsync("Bo Lind");
        var entries = await works.EntriesAsync(ada.PersonId);

        await ResetAsync(quality);
        Assert.Equal(entries, await works.EntriesAsync(ada.PersonId));
        await ResetAsync(admin);
        Assert.Equal(entries + 1, await works.EntriesAsync(ada.PersonId));
        Assert.True(await EntersAsync(site, null));
        var (key, _) = await SetUpAsync(works, site);
        works.Clock.Advance(TimeSpan.FromMinutes(1));
        using var visit = new SiteVisit(site.Address);
        await SendAsync(visit, CodeOf(key, works));
        works.Clock.Advance(TimeSpan.FromSeconds(30));
        await visit.PostBareAsync(
            Routes.SecondFactor,
            "remove-second-factor",
            [
                new(SiteVisit.TokenField, await visit.TokenAsync()),
                new("Out.Password", WorkingSite.Password),
                new("Out.Code", CodeOf(key, works)),
            ]
        );

        Assert.True(await EntersAsync(site, null));
        Assert.Empty(await works.LedgerProblemsAsync());

        Task<HttpResponseMessage> ResetAsync(SiteVisit by) =>
            by.PostAsync(
                Routes.Person(ada.PersonId),
                "reset-means",
                [new("Reset.Reason", "The phone is lost")]
            );
    }

    /// <summary>A PIN stands for both factors on its tablet, so both are proved before it is set.</summary>
    [Fact]
    public async Task Code_IsAskedFor_BeforeAPinIsSet()
    {
        await using var works = await WorkingSite.OpenAsync(server);
        await works.EnterAsync("Ada Voss", Role.Operator);
        await using var site = new RunningSite(works);
        var (key, _) = await SetUpAsync(works, site);
        using var tablet = await TabletVisit.RegisteredAsync(works, site);
        works.Clock.Advance(TimeSpan.FromMinutes(1));
        await tablet.SignInAsync(Name, CodeOf(key, works));
        Assert.Equal("Ada Voss", await tablet.NameAsync());

        Assert.Contains(
            "Give the code",
            await tablet.SetPinAsync("482913"),
            StringComparison.Ordinal
        );
        works.Clock.Advance(TimeSpan.FromMinutes(1));
        await tablet.SetPinAsync("482913", code: CodeOf(key, works));
        await tablet.SignOutAsync();
        await tablet.EnterAsync(Name, WorkingSite.Password);
        Assert.Null(await tablet.NameAsync());
        await tablet.EnterAsync(Name, "482913");

        Assert.Equal("Ada Voss", await tablet.NameAsync());
    }

    /// <summary>OWASP ASVS 5.0, 6.5.2: whoever reads the database alone has no second factor of anybody.</summary>
    [Fact]
    public async Task KeyAndRecoveryCodes_AreSealedAndHashed_InTheDatabase()
    {
        await using var works = await WorkingSite.OpenAsync(server);
        await works.EnterAsync("Ada Voss", Role.Administrator);
        await using var site = new RunningSite(works);

        var (key, recovery) = await SetUpAsync(works, site);

        var kept = await KeptAsync(works);
        Assert.Equal(2, kept.Count);
        Assert.DoesNotContain(kept, k => k.Contains(key, StringComparison.Ordinal));
        Assert.DoesNotContain(
            kept,
            k => recovery.Any(code => k.Contains(code, StringComparison.Ordinal))
        );
    }

    /// <summary>What an earlier version wrote as it was is sealed and hashed at the start, and goes on to be good.</summary>
    [Fact]
    public async Task KeyAndRecoveryCodes_OfAnEarlierVersion_AreTakenOver()
    {
        const string Key = "JBSWY3DPEHPK3PXPJBSWY3DPEHPK3PXP";
        await using var works = await WorkingSite.OpenAsync(server);
        var ada = await works.EnterAsync("Ada Voss", Role.Administrator);
        await works.Database.ReadAsync(async db =>
        {
            var account = await db.Users.SingleAsync(a => a.PersonId == ada.PersonId);
            account.TwoFactorEnabled = true;
            db.UserTokens.AddRange(
                Token(account.Id, "AuthenticatorKey", Key),
                Token(account.Id, "RecoveryCodes", "2B3CD-4F5GH;6J7KM-8N9PQ")
            );
            return await db.SaveChangesAsync();
        });
        using var folder = new TestFolder();
        for (var start = 0; start < 2; start++)
        {
            await using var site = new RunningSite(works, folder.Path);
            works.Clock.Advance(TimeSpan.FromMinutes(1));

            Assert.True(await EntersAsync(site, CodeOf(Key, works)));
            Assert.True(await EntersAsync(site, start == 0 ? "2B3CD-4F5GH" : "6J7KM-8N9PQ"));
            Assert.False(await EntersAsync(site, "2B3CD-4F5GH"));
        }

        Assert.DoesNotContain(
            await KeptAsync(works),
            k =>
                k.Contains(Key, StringComparison.Ordinal)
                || k.Contains('-', StringComparison.Ordinal)
                    && !k.StartsWith("sealed:", StringComparison.Ordinal)
        );

        static IdentityUserToken<Guid> Token(Guid account, string name, string value) =>
            new()
            {
                UserId = account,
                LoginProvider = "[AspNetUserStore]",
                Name = name,
                Value = value,
            };
    }

    private static Task<List<string>> KeptAsync(WorkingSite works) =>
        works.Database.ReadAsync(db => db.UserTokens.Select(t => t.Value!).ToListAsync());

    private static async Task<(string Key, IReadOnlyList<string> Recovery)> SetUpAsync(
        WorkingSite works,
        RunningSite site
    )
    {
        using var visit = await site.SignInAsync("Ada Voss");
        var begun = await PageAsync(
            await visit.PostAsync(
                Routes.SecondFactor,
                "begin-second-factor",
                [new("In.Password", WorkingSite.Password)]
            )
        );
        var key = begun.QuerySelector("code.hash")!.TextContent;
        var wrong = await PageAsync(await ConfirmAsync("000000"));
        Assert.Contains("not the one", wrong.Body!.TextContent, StringComparison.Ordinal);
        works.Clock.Advance(TimeSpan.FromSeconds(30));
        var done = await PageAsync(await ConfirmAsync(CodeOf(key, works)));
        return (key, [.. done.QuerySelectorAll("li > code").Select(c => c.TextContent)]);

        Task<HttpResponseMessage> ConfirmAsync(string code) =>
            visit.PostAsync(
                Routes.SecondFactor,
                "confirm-second-factor",
                [new("First.Code", code)]
            );
    }

    private static string CodeOf(string key, WorkingSite works) =>
        new Totp(Base32Encoding.ToBytes(key)).ComputeTotp(works.Clock.GetUtcNow().UtcDateTime);

    private static async Task<bool> EntersAsync(RunningSite site, string? code)
    {
        using var visit = new SiteVisit(site.Address);
        return (await SendAsync(visit, code)).StatusCode == HttpStatusCode.Redirect;
    }

    private static async Task IsRefusedAsync(RunningSite site, string? code, string words)
    {
        using var visit = new SiteVisit(site.Address);
        var page = await PageAsync(await SendAsync(visit, code));
        Assert.Contains(
            words,
            page.QuerySelector("[data-error-summary]")?.TextContent ?? "",
            StringComparison.Ordinal
        );
    }

    private static Task<HttpResponseMessage> SendAsync(SiteVisit visit, string? code) =>
        visit.PostAsync(
            Routes.SignIn,
            "sign-in",
            [
                new("In.Name", Name),
                new("In.Password", WorkingSite.Password),
                new("In.Code", code ?? ""),
            ]
        );

    private static async Task<HttpResponseMessage> SignAsync(SiteVisit visit, string? code)
    {
        // Whoever signed in anew has forms of their own.
        var token = await visit.TokenAsync();
        return await visit.PostBareAsync(
            Routes.SiteKey,
            "key",
            [
                new(SiteVisit.TokenField, token),
                new("In.Reason", "Changed each spring"),
                new("In.SignerName", Name),
                new("In.Password", WorkingSite.Password),
                new("In.SignerCode", code ?? ""),
            ]
        );
    }

    private static Task<IHtmlDocument> PageAsync(HttpResponseMessage answer) =>
        SiteVisit.PageAsync(answer);
}
