using System.Net;
using AngleSharp.Html.Dom;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.People;
using WeldTrace.Web.Security;
using WeldTrace.Web.Tests.Features;

namespace WeldTrace.Web.Tests.Access;

/// <summary>A device at which one person after the other stands.</summary>
internal sealed class TabletVisit(RunningSite site) : IDisposable
{
    private readonly SiteVisit _visit = new(site.Address);

    /// <summary>A tablet that a quality manager has registered, and at which they are signed in.</summary>
    public static async Task<TabletVisit> RegisteredAsync(
        WorkingSite works,
        RunningSite site,
        string name = "Tablet at welding cell 2"
    )
    {
        if (
            !await works.Database.ReadAsync(db =>
                db.People.AnyAsync(p => p.SignInName == "quentin.hale")
            )
        )
        {
            await works.EnterAsync("Quentin Hale", Role.QualityManager);
        }

        var visit = new TabletVisit(site);
        await visit.SignInAsync("quentin.hale");
        await visit.RegisterAsync(name);
        Assert.True(
            await works.Database.ReadAsync(db => db.SharedTablets.AnyAsync(t => t.Name == name))
        );
        return visit;
    }

    /// <summary>Gives a person a badge, and its word.</summary>
    public static async Task<string> GiveBadgeAsync(WorkingSite works, Guid person)
    {
        var word = BadgeWord.New();
        var hash = TokenWord.HashOf(word);
        await works.Database.ReadAsync(db =>
            db.Users.Where(a => a.PersonId == person)
                .ExecuteUpdateAsync(change => change.SetProperty(a => a.BadgeSha256, hash))
        );
        return word;
    }

    /// <summary>The printed name of whoever is signed in; null when nobody is.</summary>
    public async Task<string?> NameAsync()
    {
        var answer = await _visit.GetAsync(Routes.Me);
        return answer.StatusCode == HttpStatusCode.OK
            ? (await SiteVisit.PageAsync(answer)).QuerySelector("h1")!.TextContent
            : null;
    }

    /// <summary>The same device, with the cookies of now, in other hands.</summary>
    public TabletVisit Copy()
    {
        var copy = new TabletVisit(site);
        copy._visit.Cookies.Add(_visit.Cookies.GetAllCookies());
        return copy;
    }

    /// <summary>Where an address sends somebody who is not signed in.</summary>
    public async Task<string?> LeadsToAsync(string path) =>
        (await _visit.GetAsync(path)).Headers.Location?.PathAndQuery;

    public async Task<bool> OpensAsync(string path) =>
        (await _visit.GetAsync(path)).StatusCode == HttpStatusCode.OK;

    public Task SignInAsync(string name, string code = "") =>
        SendAsync(
            Routes.SignIn,
            "sign-in",
            ("In.Name", name),
            ("In.Password", WorkingSite.Password),
            ("In.Code", code)
        );

    public Task SignOutAsync() => SendAsync(Routes.SignOut, null);

    public Task RegisterAsync(string name) =>
        SendAsync(Routes.SharedTablets, "register-tablet", ("In.Name", name));

    public Task WithdrawAsync(Guid tablet) =>
        SendAsync(
            Routes.SharedTablets,
            "withdraw-tablet",
            ("Out.Id", tablet.ToString("D")),
            ("Out.Reason", "It fell")
        );

    /// <summary>Scans or types who it is, and nothing more.</summary>
    public async Task<IHtmlDocument> AskAsync(string who) =>
        await SiteVisit.PageAsync(
            await SendAsync(Routes.ChangePerson, "change-person", ("In.Who", who))
        );

    /// <summary>Scans or types who it is, and gives a PIN or password; answers what the page then says.</summary>
    public async Task<string> EnterAsync(string who, string secret) =>
        await TextAsync(
            await SendAsync(
                Routes.ChangePerson,
                "change-person",
                ("In.Who", who),
                ("In.Secret", secret)
            )
        );

    public async Task<string> SetPinAsync(
        string pin,
        string password = WorkingSite.Password,
        string? again = null,
        string code = ""
    ) =>
        await TextAsync(
            await SendAsync(
                Routes.Pin,
                "set-pin",
                ("In.Password", password),
                ("In.Code", code),
                ("In.New", pin),
                ("In.Again", again ?? pin)
            )
        );

    public Task ErasePinAsync(Guid tablet) =>
        SendAsync(Routes.Pin, "erase-pin", ("Out.Id", tablet.ToString("D")));

    public Task ChangePasswordAsync(string password) =>
        SendAsync(
            Routes.ChangePassword,
            "change-password",
            ("In.Current", WorkingSite.Password),
            ("In.New", password)
        );

    public Task<HttpResponseMessage> MakeBadgeAsync(Guid person) =>
        SendAsync(Routes.Badge(person), null);

    public Task WithdrawBadgeAsync(Guid person) =>
        SendAsync(Routes.Person(person), "withdraw-badge", ("Badge.Reason", "Lost"));

    /// <summary>Whether the next signature takes the name too.</summary>
    public async Task<bool> AsksForSignerNameAsync()
    {
        var page = await SiteVisit.PageAsync(await _visit.GetAsync(Routes.NewLimits));
        return page.QuerySelector("[name$='.SignerName']") is not null;
    }

    public void Dispose() => _visit.Dispose();

    // Whoever took over has forms of their own.
    private async Task<HttpResponseMessage> SendAsync(
        string path,
        string? form,
        params IReadOnlyList<(string Name, string Value)> fields
    )
    {
        var token = await _visit.TokenAsync();
        return await _visit.PostBareAsync(
            path,
            form,
            [
                .. fields.Select(f => KeyValuePair.Create(f.Name, f.Value)),
                new(SiteVisit.TokenField, token),
            ]
        );
    }

    private static async Task<string> TextAsync(HttpResponseMessage answer) =>
        (await SiteVisit.PageAsync(answer)).Body!.TextContent;
}
