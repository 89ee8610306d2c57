using System.Buffers.Binary;
using System.Net;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence.Accounts;
using WeldTrace.Web.Demo;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Tests.Access;

/// <summary>Where the sign-in leads, and what holds somebody up after it.</summary>
[Collection(typeof(DemoSiteGroup))]
public sealed class SignInTests(DemoSite site)
{
    [Theory]
    [InlineData("/vessels/NR10-0001?tab=1", "/vessels/NR10-0001?tab=1")]
    [InlineData("", "/")]
    [InlineData("https://elsewhere.example/", "/")]
    [InlineData("//elsewhere.example/", "/")]
    [InlineData("/\\elsewhere.example/", "/")]
    [InlineData("\\\\elsewhere.example/", "/")]
    [InlineData("/\t/elsewhere.example/", "/")]
    [InlineData("/\n/elsewhere.example/", "/")]
    [InlineData(" //elsewhere.example/", "/")]
    [InlineData("javascript:alert(1)", "/")]
    public async Task SignIn_LeadsBack_ToThisSiteOnly(string from, string expected)
    {
        using var visit = new SiteVisit(site.Address);

        var answer = await visit.PostAsync(
            $"{Routes.SignIn}?from={Uri.EscapeDataString(from)}",
            "sign-in",
            [new("In.Name", DemoPeople.Auditor.SignInName), new("In.Password", DemoPeople.Password)]
        );

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        Assert.Equal(
            new Uri(site.Address, expected),
            new Uri(site.Address, answer.Headers.Location!)
        );
    }

    /// <summary>PBKDF2 with HMAC-SHA-512 and 210,000 turns: OWASP Password Storage Cheat Sheet.</summary>
    [Fact]
    public async Task Password_IsKeptAsAHash_ThatIsSlowToGuess()
    {
        var hash = Convert.FromBase64String(
            await site.ReadAsync(db => db.Users.Select(a => a.PasswordHash!).FirstAsync())
        );

        // Layout of ASP.NET Core Identity, version 3: mark, pseudorandom function, turns, each big-endian.
        Assert.Equal(1, hash[0]);
        Assert.Equal(2u, BinaryPrimitives.ReadUInt32BigEndian(hash.AsSpan(1)));
        Assert.True(BinaryPrimitives.ReadUInt32BigEndian(hash.AsSpan(5)) >= 210_000);
    }

    /// <summary>Somebody else knows a first password, so nothing is seen or done before it is changed.</summary>
    [Fact]
    public async Task Newcomer_ChangesTheFirstPassword_BeforeAnythingElse()
    {
        const string First = "six slow tugs at sea";
        const string Own = "nine warm stones in a row";
        await EnterAsync("Nina Vik", "nina", First);
        using var newcomer = new SiteVisit(site.Address);
        await newcomer.SignInAsync("nina", First);

        foreach (
            var path in new[]
            {
                "/",
                "/vessels/NR10-0001",
                "/vessels.csv",
                "/vessels/NR10-0001/traveler.pdf",
                "/vessels/NR10-0001/history.zip",
                "/vessels/NR10.1",
            }
        )
        {
            var answer = await newcomer.GetAsync(path);
            Assert.True(
                answer.Headers.Location?.ToString() == Routes.ChangePassword,
                $"{path} answered {(int)answer.StatusCode}"
            );
        }

        Assert.Equal(HttpStatusCode.OK, (await newcomer.GetAsync("/app.css")).StatusCode);
        await newcomer.PostAsync(
            Routes.ChangePassword,
            "change-password",
            [new("In.Current", First), new("In.New", Own)]
        );
        Assert.Equal(HttpStatusCode.OK, (await newcomer.GetAsync("/vessels.csv")).StatusCode);
    }

    /// <summary>A session ends with the account, not with its cookie.</summary>
    [Fact]
    public async Task Session_OfSomebodySetInactive_EndsAtOnce()
    {
        var person = await EnterAsync("Iver Moe", "iver", "eight loud gulls above");
        using var visit = new SiteVisit(site.Address);
        await visit.SignInAsync("iver", "eight loud gulls above");
        Assert.Equal(Routes.ChangePassword, await LeadsToAsync(visit));

        var admin = await site.VisitAsync(DemoPeople.Administrator);
        await admin.PostAsync(
            person,
            "person",
            [new("In.Version", "1"), new("In.PrintedName", "Iver Moe"), new("In.Roles", "Auditor")]
        );

        Assert.StartsWith(Routes.SignIn, await LeadsToAsync(visit), StringComparison.Ordinal);
    }

    /// <summary>OWASP ASVS 5.0, 7.4.3: whoever knew the old password is out.</summary>
    [Fact]
    public async Task Session_ElsewhereOfSomebodyWithANewPassword_Ends()
    {
        const string First = "ten small boats at rest";
        await EnterAsync("Runa Lie", "runa", First);
        using var here = new SiteVisit(site.Address);
        await here.SignInAsync("runa", First);
        using var elsewhere = new SiteVisit(site.Address);
        await elsewhere.SignInAsync("runa", First);
        Assert.Equal(Routes.ChangePassword, await LeadsToAsync(elsewhere));

        await here.PostAsync(
            Routes.ChangePassword,
            "change-password",
            [new("In.Current", First), new("In.New", "eleven soft bells far off")]
        );

        Assert.StartsWith(Routes.SignIn, await LeadsToAsync(elsewhere), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await here.GetAsync(Routes.Home)).StatusCode);
    }

    /// <summary>OWASP ASVS 5.0, 7.2.4: whoever signs in again leaves no older session behind.</summary>
    [Fact]
    public async Task Session_OfSomebodyWhoSignsInAgain_Ends()
    {
        using var visit = new SiteVisit(site.Address);
        await visit.SignInAsync(DemoPeople.Auditor.SignInName, DemoPeople.Password);
        using var copy = new SiteVisit(site.Address);
        copy.Cookies.Add(visit.Cookies.GetAllCookies());
        Assert.Equal(HttpStatusCode.OK, (await copy.GetAsync(Routes.Home)).StatusCode);

        await visit.SignInAsync(DemoPeople.Auditor.SignInName, DemoPeople.Password);

        Assert.StartsWith(Routes.SignIn, await LeadsToAsync(copy), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await visit.GetAsync(Routes.Home)).StatusCode);
    }

    /// <summary>OWASP ASVS 5.0, 6.3.1: one password tried on many accounts is held up, where it comes from and nowhere else.</summary>
    [Fact]
    public async Task SignIn_AfterManyWrongOnesFromOneAddress_IsHeldUpThereOnly()
    {
        // A demonstration answers its own machine only, which has all of these addresses.
        using var guesser = new SiteVisit(site.Address) { From = "127.0.0.7" };
        for (var i = 0; i < SignInLimit.MostWrong; i++)
        {
            await TryAsync(guesser, $"guess-{i}", "one password for all");
        }

        var held = await TryAsync(guesser, DemoPeople.Auditor.SignInName, DemoPeople.Password);

        Assert.Equal(HttpStatusCode.OK, held.StatusCode);
        Assert.Contains(
            "Too many wrong sign-ins came from this network address. Wait 5 minutes",
            (await SiteVisit.PageAsync(held)).Body!.TextContent,
            StringComparison.Ordinal
        );
        using var neighbour = new SiteVisit(site.Address) { From = "127.0.0.8" };
        await neighbour.SignInAsync(DemoPeople.Auditor.SignInName, DemoPeople.Password);
    }

    /// <summary>OWASP ASVS 5.0, 6.3.1: guesses that were let in together are not counted as one.</summary>
    [Fact]
    public async Task WrongPasswords_AtTheSameInstant_CountEach()
    {
        await EnterAsync("Even Dahl", "even", "twelve dry oars ashore");
        await using var first = site.Services.CreateAsyncScope();
        await using var second = site.Services.CreateAsyncScope();
        var asFirstSees = await AccountAsync(first, "even");
        var asSecondSees = await AccountAsync(second, "even");

        await CheckAsync(first, asFirstSees);
        await CheckAsync(second, asSecondSees);

        Assert.Equal(
            2,
            await site.ReadAsync(db =>
                db.Users.Where(a => a.UserName == "even")
                    .Select(a => a.AccessFailedCount)
                    .SingleAsync()
            )
        );
    }

    private static async Task<Account> AccountAsync(AsyncServiceScope scope, string name) =>
        (
            await scope
                .ServiceProvider.GetRequiredService<UserManager<Account>>()
                .FindByNameAsync(name)
        )!;

    private static Task<Outcome> CheckAsync(AsyncServiceScope scope, Account account) =>
        scope
            .ServiceProvider.GetRequiredService<PasswordCheck>()
            .CheckAsync(account, "not the password", "Wrong.");

    private static Task<HttpResponseMessage> TryAsync(
        SiteVisit visit,
        string name,
        string password
    ) =>
        visit.PostAsync(
            Routes.SignIn,
            "sign-in",
            [new("In.Name", name), new("In.Password", password)]
        );

    private static async Task<string> LeadsToAsync(SiteVisit visit) =>
        new Uri(visit.Site, (await visit.GetAsync(Routes.Home)).Headers.Location!).PathAndQuery;

    private async Task<string> EnterAsync(string name, string signInName, string password)
    {
        var admin = await site.VisitAsync(DemoPeople.Administrator);
        await admin.PostAsync(
            Routes.NewPerson,
            "person",
            [
                new("In.PrintedName", name),
                new("In.SignInName", signInName),
                new("In.Roles", "Auditor"),
                new("In.Password", password),
            ]
        );
        return Routes.Person(
            (
                await site.ReadAsync(db =>
                    Task.FromResult(db.People.Single(p => p.SignInName == signInName))
                )
            ).Id
        );
    }
}
