using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using WeldTrace.Domain.Ledger;
using WeldTrace.Domain.People;
using WeldTrace.Persistence;
using WeldTrace.Persistence.LedgerStore;
using WeldTrace.TestSupport.Database;
using WeldTrace.Web.Features.SiteSettings.Key;

namespace WeldTrace.Web.Tests.Features;

/// <summary>The site's key changes on record, and a crash at the change leaves one key in use.</summary>
public sealed class SiteKeyTests(PostgresServerFixture server) : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("site-keys-").FullName;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Change_RetiresTheOldKey_AndItsCheckpointsStillVerify()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var admin = await site.EnterAsync("admin", Role.Administrator);
        var folder = await OnRecordAsync(site);
        var old = folder.Current;
        await TakeAsync(site, folder);

        var outcome = await Handler(site, folder)
            .ChangeAsync(Form("Its keeper left"), admin, Cancellation);

        Assert.Empty(outcome.Refusals);
        Assert.NotEqual(old.Fingerprint, folder.Current.Fingerprint);
        Assert.Equal(folder.Current.Fingerprint, new SiteKeyFolder(_folder).Current.Fingerprint);
        var keys = await Handler(site, folder).ReadAsync(Cancellation);
        Assert.Equal([null, site.Clock.GetUtcNow()], keys.Select(k => k.Until));
        await TakeAsync(site, folder);
        Assert.Empty(await site.LedgerProblemsAsync());

        // Whoever kept a copy of the old key can't sign with it any more.
        site.Clock.Advance(TimeSpan.FromMinutes(5));
        await site.EnterAsync("operator", Role.Operator);
        await using var db = site.Database.CreateDbContext();
        await db.TakeCheckpointAsync(old, "Test works", site.Clock.GetUtcNow(), Cancellation);
        Assert.EndsWith(
            "is signed with a key that is not on record.",
            Assert.Single(await site.LedgerProblemsAsync()),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("", WorkingSite.Password, "reason:Reason")]
    [InlineData("Its keeper left", "wrong", "password:Password")]
    public async Task Change_WithoutReasonOrPassword_IsRefused(
        string reason,
        string password,
        string said
    )
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var admin = await site.EnterAsync("admin", Role.Administrator);
        var folder = await OnRecordAsync(site);
        var before = folder.Current.Fingerprint;

        var outcome = await Handler(site, folder)
            .ChangeAsync(
                new SiteKeyForm { Reason = reason, Password = password },
                admin,
                Cancellation
            );

        Assert.Equal(said, WorkingSite.Text(outcome.Refusals));
        Assert.Equal(before, folder.Current.Fingerprint);
    }

    [Fact]
    public async Task Change_ByAnotherRole_IsRefused()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var quality = await site.EnterAsync("quality", Role.QualityManager);
        var folder = await OnRecordAsync(site);

        var outcome = await Handler(site, folder)
            .ChangeAsync(Form("Its keeper left"), quality, Cancellation);

        Assert.False(outcome.IsAccepted);
        Assert.Single(await Handler(site, folder).ReadAsync(Cancellation));
    }

    /// <summary>The power went between the save and the exchange of the files.</summary>
    [Fact]
    public async Task Start_AfterACrashAtTheChange_TakesTheKeyOnRecord()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var admin = await site.EnterAsync("admin", Role.Administrator);
        var folder = await OnRecordAsync(site);
        var next = folder.PrepareNext();
        await using (var db = site.Database.CreateDbContext())
        {
            var now = site.Clock.GetUtcNow();
            var inUse = await db.SigningKeys.SingleAsync(Cancellation);
            Assert.Empty(inUse.Retire("Its keeper left", admin, now).Refusals);
            db.Add(SigningKey.TakeIntoUse(next, admin, now, "Its keeper left"));
            Assert.Empty((await db.SaveAsync(Cancellation)).Refusals);
        }

        var restarted = await OnRecordAsync(site);

        Assert.Equal(next.Fingerprint, restarted.Current.Fingerprint);
        Assert.False(File.Exists(Path.Combine(_folder, SiteKeyFolder.NextFileName)));
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static SiteKeyForm Form(string reason) =>
        new() { Reason = reason, Password = WorkingSite.Password };

    private static SiteKeyHandler Handler(WorkingSite site, SiteKeyFolder folder) =>
        new(site.Database, folder, site.Passwords, site.Clock);

    private static async Task TakeAsync(WorkingSite site, SiteKeyFolder folder)
    {
        await using var db = site.Database.CreateDbContext();
        await db.TakeCheckpointAsync(
            folder.Current,
            "Test works",
            site.Clock.GetUtcNow(),
            Cancellation
        );
    }

    /// <summary>Starts as the program does: its key is on record afterwards.</summary>
    private async Task<SiteKeyFolder> OnRecordAsync(WorkingSite site)
    {
        var folder = new SiteKeyFolder(_folder);
        await using var services = new ServiceCollection()
            .AddSingleton<IDbContextFactory<WeldTraceDbContext>>(site.Database)
            .AddSingleton(folder)
            .BuildServiceProvider();
        await new KeyOnRecordHandler(
            services,
            site.Clock,
            NullLogger<KeyOnRecordHandler>.Instance
        ).StartAsync(Cancellation);
        return folder;
    }
}
