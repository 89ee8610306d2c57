using System.Buffers.Binary;
using System.Net;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Web.Demo;

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
