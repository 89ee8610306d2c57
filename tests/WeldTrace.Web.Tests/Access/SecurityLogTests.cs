using System.Net;
using System.Net.Http.Headers;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Web.Demo;

namespace WeldTrace.Web.Tests.Access;

/// <summary>OWASP ASVS 5.0, 16.3: the log of the running site tells of sign-ins, and of what was refused to whom.</summary>
[Collection(typeof(DemoSiteGroup))]
public sealed class SecurityLogTests(DemoSite site)
{
    [Fact]
    public async Task SignIn_WrongAndRight_IsLogged_WithItsAddress()
    {
        using var visit = new SiteVisit(site.Address) { From = "127.0.0.9" };

        await visit.PostAsync(
            Routes.SignIn,
            "sign-in",
            [new("In.Name", DemoPeople.Auditor.SignInName), new("In.Password", "typed in a hurry")]
        );
        Assert.Contains("A sign-in from 127.0.0.9 was refused.", site.Log.Lines);

        await visit.SignInAsync(DemoPeople.Auditor.SignInName, DemoPeople.Password);
        var auditor = await IdAsync(DemoPeople.Auditor);
        Assert.Contains($"Person {auditor} signed in from 127.0.0.9.", site.Log.Lines);
        Assert.DoesNotContain(
            site.Log.Lines,
            line => line.Contains("typed in a hurry", StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task Page_NotForTheRole_IsLogged_WithWhoAskedForIt()
    {
        var visit = await site.VisitAsync(DemoPeople.Operator);

        await visit.GetAsync(Routes.NewPerson);

        var person = await IdAsync(DemoPeople.Operator);
        Assert.Contains(
            $"Person {person} was refused GET {Routes.NewPerson}: it is not for their role.",
            site.Log.Lines
        );
    }

    [Fact]
    public async Task Form_WithoutItsToken_IsLogged()
    {
        using var visit = new SiteVisit(site.Address) { From = "127.0.0.10" };

        await visit.PostBareAsync(Routes.SignIn, "sign-in", [new("In.Name", "somebody")]);

        Assert.Contains(
            $"A form from 127.0.0.10 to {Routes.SignIn} was refused: its token is not the one of whoever sent it.",
            site.Log.Lines
        );
    }

    [Fact]
    public async Task Token_ThatDoesNotHold_IsLogged_WithoutItself()
    {
        var machine = await site.ReadAsync(db => db.Machines.Select(m => m.Id).FirstAsync());
        using var client = new HttpClient { BaseAddress = site.Address };
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue(
            "Bearer",
            "withdrawn-long-ago"
        );
        client.DefaultRequestHeaders.Add("X-Forwarded-For", "127.0.0.11");

        var answer = await client.GetAsync(
            $"/equipment/machines/{machine:D}/logs/{Guid.Empty:D}",
            TestContext.Current.CancellationToken
        );

        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
        Assert.Contains(
            site.Log.Lines,
            line => line.StartsWith("A token from 127.0.0.11 was refused", StringComparison.Ordinal)
        );
        Assert.DoesNotContain(
            site.Log.Lines,
            line => line.Contains("withdrawn-long-ago", StringComparison.Ordinal)
        );
    }

    private Task<Guid> IdAsync(DemoPerson person) =>
        site.ReadAsync(db =>
            db.People.Where(p => p.SignInName == person.SignInName).Select(p => p.Id).SingleAsync()
        );
}
