using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.People;
using WeldTrace.Persistence.Accounts;
using WeldTrace.TestSupport.Database;
using WeldTrace.Web.Tests.Features;

namespace WeldTrace.Web.Tests.Access;

/// <summary>Shared tablets over HTTP: registered, taken over by badge or name and PIN, and what a PIN does not do.</summary>
public sealed class SharedTabletTests(PostgresServerFixture server)
{
    private const string Pin = "482913";

    [Fact]
    public async Task Person_TakesOver_ByBadgeAndPin_AndTheOneBeforeIsOut()
    {
        await using var works = await WorkingSite.OpenAsync(server);
        var ada = await works.EnterAsync("Ada Voss", Role.Operator);
        await works.EnterAsync("Bo Lind", Role.Operator);
        await using var site = new RunningSite(works);
        using var tablet = await TabletVisit.RegisteredAsync(works, site);
        await SetPinAsync(tablet, "ada.voss");
        var badge = await TabletVisit.GiveBadgeAsync(works, ada.PersonId);
        await tablet.EnterAsync("bo.lind", WorkingSite.Password);
        Assert.Equal("Bo Lind", await tablet.NameAsync());
        using var copy = tablet.Copy();

        var named = await tablet.AskAsync(badge);
        Assert.Equal("Ada Voss", named.QuerySelector("h1")!.TextContent);
        Assert.Equal("Bo Lind", await tablet.NameAsync());
        await tablet.EnterAsync(badge, Pin);

        Assert.Equal("Ada Voss", await tablet.NameAsync());
        Assert.Null(await copy.NameAsync());
        Assert.Equal(
            (SignInWay.Password, SessionEnd.OtherPerson),
            await works.Database.ReadAsync(async db =>
            {
                var ended = await db
                    .AccountSessions.Where(s => s.EndedAt != null)
                    .OrderBy(s => s.Id)
                    .LastAsync();
                return (ended.Way, ended.EndedBecause!.Value);
            })
        );
    }

    /// <summary>A badge names its owner and proves nothing; a PIN is worth nothing elsewhere.</summary>
    [Fact]
    public async Task Badge_OrPin_Alone_OrOnAnotherDevice_OpensNothing()
    {
        await using var works = await WorkingSite.OpenAsync(server);
        var ada = await works.EnterAsync("Ada Voss", Role.Operator);
        await works.EnterAsync("Bo Lind", Role.Operator);
        await using var site = new RunningSite(works);
        using var tablet = await TabletVisit.RegisteredAsync(works, site);
        await SetPinAsync(tablet, "ada.voss");
        var badge = await TabletVisit.GiveBadgeAsync(works, ada.PersonId);
        await tablet.SignOutAsync();

        await tablet.EnterAsync(badge, "");
        Assert.Null(await tablet.NameAsync());
        await tablet.EnterAsync(badge, "482914");
        Assert.Null(await tablet.NameAsync());
        await tablet.EnterAsync("bo.lind", Pin);
        Assert.Null(await tablet.NameAsync());

        Assert.Equal(
            $"{Routes.ChangePerson}?from=%2Fvessels",
            await tablet.LeadsToAsync(Routes.Vessels)
        );
        using var elsewhere = new TabletVisit(site);
        Assert.Equal(
            $"{Routes.SignIn}?from=%2Fvessels",
            await elsewhere.LeadsToAsync(Routes.Vessels)
        );
        await elsewhere.EnterAsync(badge, Pin);
        Assert.Null(await elsewhere.NameAsync());
        using var other = await TabletVisit.RegisteredAsync(
            works,
            site,
            "Tablet in the bench room"
        );
        await other.SignOutAsync();
        await other.EnterAsync(badge, Pin);
        Assert.Null(await other.NameAsync());
        await other.EnterAsync(badge, WorkingSite.Password);
        Assert.Equal("Ada Voss", await other.NameAsync());
    }

    [Fact]
    public async Task WrongPins_AreHeldUp_AndTheFifthErasesThePin_InTheLedger()
    {
        await using var works = await WorkingSite.OpenAsync(server);
        var ada = await works.EnterAsync("Ada Voss", Role.Operator);
        await using var site = new RunningSite(works);
        using var tablet = await TabletVisit.RegisteredAsync(works, site);
        await SetPinAsync(tablet, "ada.voss");
        await tablet.SignOutAsync();
        var entries = await works.EntriesAsync(ada.PersonId);

        for (var i = 0; i < 4; i++)
        {
            await tablet.EnterAsync("ada.voss", "000001");
        }

        Assert.Contains(
            "wait 2 s",
            await tablet.EnterAsync("ada.voss", Pin),
            StringComparison.Ordinal
        );
        Assert.Null(await tablet.NameAsync());
        works.Clock.Advance(TimeSpan.FromSeconds(2));
        Assert.Contains(
            "is erased",
            await tablet.EnterAsync("ada.voss", "000001"),
            StringComparison.Ordinal
        );
        await tablet.EnterAsync("ada.voss", Pin);
        Assert.Null(await tablet.NameAsync());

        Assert.Equal(entries + 1, await works.EntriesAsync(ada.PersonId));
        Assert.Empty(await works.LedgerProblemsAsync());
        await tablet.EnterAsync("ada.voss", WorkingSite.Password);
        Assert.Equal("Ada Voss", await tablet.NameAsync());
    }

    /// <summary>A PIN signs in only: a signature takes name and password, accounts take a password, and ten idle minutes end it.</summary>
    [Fact]
    public async Task PinSession_SignsNothing_ManagesNobody_AndIsShort()
    {
        await using var works = await WorkingSite.OpenAsync(server);
        var quality = await works.EnterAsync("Ada Voss", Role.QualityManager);
        await using var site = new RunningSite(works);
        using var tablet = await TabletVisit.RegisteredAsync(works, site);
        await SetPinAsync(tablet, "ada.voss");
        Assert.True(await tablet.OpensAsync(Routes.NewPerson));
        await tablet.EnterAsync("ada.voss", Pin);

        Assert.Equal("Ada Voss", await tablet.NameAsync());
        Assert.False(await tablet.OpensAsync(Routes.NewPerson));
        Assert.False(await tablet.OpensAsync(Routes.SharedTablets));
        Assert.True(await tablet.AsksForSignerNameAsync());
        Assert.Contains(
            "sign in on this tablet with your password",
            await tablet.SetPinAsync(Pin),
            StringComparison.Ordinal
        );
        works.Clock.Advance(TimeSpan.FromMinutes(11));
        Assert.Null(await tablet.NameAsync());
        await tablet.EnterAsync("ada.voss", Pin);
        works.Clock.Advance(TimeSpan.FromMinutes(9));
        Assert.NotNull(await tablet.NameAsync());

        // Whoever becomes administrator has no PIN any more.
        await works.ChangeAsync<Person>(
            quality.PersonId,
            p =>
                p.Change(
                    p.PrintedName,
                    [Role.QualityManager, Role.Administrator],
                    true,
                    quality,
                    works.Clock.GetUtcNow()
                )
        );
        Assert.Null(await tablet.NameAsync());
    }

    [Fact]
    public async Task Pin_IsSet_OnATabletOnly_ByItsOwner_WithThePassword()
    {
        await using var works = await WorkingSite.OpenAsync(server);
        var ada = await works.EnterAsync("Ada Voss", Role.Operator);
        await works.EnterAsync("Ines Vidal", Role.Administrator);
        await using var site = new RunningSite(works);
        using var office = new TabletVisit(site);
        await office.SignInAsync("ada.voss");
        await office.SetPinAsync(Pin);
        Assert.Equal(0, await PinsAsync(works));
        using var tablet = await TabletVisit.RegisteredAsync(works, site);
        await tablet.SignInAsync("ines.vidal");
        Assert.Contains(
            "An administrator signs in",
            await tablet.SetPinAsync(Pin),
            StringComparison.Ordinal
        );
        await tablet.SignInAsync("ada.voss");

        await tablet.SetPinAsync("123456");
        await tablet.SetPinAsync(Pin, again: "482914");
        await tablet.SetPinAsync(Pin, "not the password at all");
        Assert.Equal(0, await PinsAsync(works));
        await tablet.SetPinAsync(Pin);
        Assert.Equal(1, await PinsAsync(works));
        Assert.DoesNotContain(
            Pin,
            await works.Database.ReadAsync(db =>
                db.AccountPins.Select(p => p.PinHash).SingleAsync()
            ),
            StringComparison.Ordinal
        );
        Assert.Equal(2, await works.EntriesAsync(ada.PersonId));

        await tablet.ErasePinAsync(await TabletIdAsync(works));
        Assert.Equal(0, await PinsAsync(works));
        Assert.Equal(3, await works.EntriesAsync(ada.PersonId));
        Assert.Empty(await works.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Tablet_Withdrawn_TakesItsPinsAndSessionsWithIt()
    {
        await using var works = await WorkingSite.OpenAsync(server);
        await works.EnterAsync("Ada Voss", Role.Operator);
        await using var site = new RunningSite(works);
        using var tablet = await TabletVisit.RegisteredAsync(works, site);
        await SetPinAsync(tablet, "ada.voss");
        using var office = new TabletVisit(site);
        await office.SignInAsync("quentin.hale");

        await office.WithdrawAsync(await TabletIdAsync(works));

        Assert.Null(await tablet.NameAsync());
        Assert.Equal(0, await PinsAsync(works));
        Assert.StartsWith(Routes.ChangePerson, await tablet.LeadsToAsync(Routes.Me));
        await tablet.EnterAsync("ada.voss", WorkingSite.Password);
        Assert.Null(await tablet.NameAsync());
        // Shown once more, it forgets what it was.
        Assert.True(await tablet.OpensAsync(Routes.ChangePerson));
        Assert.Equal($"{Routes.SignIn}?from=%2Fme", await tablet.LeadsToAsync(Routes.Me));
        Assert.Equal("Quentin Hale", await office.NameAsync());
        Assert.Empty(await works.LedgerProblemsAsync());
    }

    /// <summary>Whoever knew the old password may have set the PIN.</summary>
    [Fact]
    public async Task NewPassword_ErasesThePins()
    {
        await using var works = await WorkingSite.OpenAsync(server);
        await works.EnterAsync("Ada Voss", Role.Operator);
        await using var site = new RunningSite(works);
        using var tablet = await TabletVisit.RegisteredAsync(works, site);
        await SetPinAsync(tablet, "ada.voss");

        await tablet.ChangePasswordAsync("eleven soft bells far off");

        Assert.Equal(0, await PinsAsync(works));
        Assert.Equal("Ada Voss", await tablet.NameAsync());
    }

    private static async Task SetPinAsync(TabletVisit tablet, string name)
    {
        await tablet.SignInAsync(name);
        await tablet.SetPinAsync(Pin);
    }

    private static Task<int> PinsAsync(WorkingSite works) =>
        works.Database.ReadAsync(db => db.AccountPins.CountAsync());

    private static Task<Guid> TabletIdAsync(WorkingSite works) =>
        works.Database.ReadAsync(db => db.SharedTablets.Select(t => t.Id).SingleAsync());
}
