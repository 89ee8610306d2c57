using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using WeldTrace.Domain.Records;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Demo;
using WeldTrace.Web.Features.Archive.ArchiveVessel;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;
using WeldTrace.Web.Tests.Features;

namespace WeldTrace.Web.Tests.Access;

/// <summary>Archives vessels of the demonstration as if eleven years had gone by.</summary>
internal static class ArchivedVessel
{
    /// <summary>The vessel that is archived in every site of the tests.</summary>
    public const string Serial = "NR10-0021";

    private const int YearsLater = 11;

    public static Task MakeAsync(DemoSite site) =>
        AtAsync(
            site,
            Later(site),
            async (handler, drafts) =>
            {
                var actor = await ActorAsync(site, DemoPeople.QualityManager);
                Accept.All(
                    await handler.WriteBundleAsync(
                        Serial,
                        site.Address,
                        actor,
                        CancellationToken.None
                    ),
                    await handler.ArchiveAsync(
                        Serial,
                        await FormAsync(site, drafts, Serial),
                        actor,
                        CancellationToken.None
                    )
                );
            }
        );

    /// <summary>When the records of the demonstration are old enough.</summary>
    public static DateTimeOffset Later(DemoSite site) => Now(site).AddYears(YearsLater);

    public static DateTimeOffset Now(DemoSite site) =>
        site.Services.GetRequiredService<TimeProvider>().GetUtcNow();

    /// <summary>Acts by the site's own services, but at another time.</summary>
    public static async Task AtAsync(
        DemoSite site,
        DateTimeOffset at,
        Func<ArchiveHandler, BundleDraft, Task> act
    )
    {
        await using var scope = site.Services.CreateAsyncScope();
        var services = scope.ServiceProvider;
        var clock = new FakeTimeProvider(at);
        await act(
            ActivatorUtilities.CreateInstance<ArchiveHandler>(
                services,
                clock,
                new SiteDay(services.GetRequiredService<SiteReader>(), clock),
                ActivatorUtilities.CreateInstance<PasswordCheck>(services, new NamedAlready())
            ),
            services.GetRequiredService<BundleDraft>()
        );
    }

    /// <summary>The form as the page shows it to whoever has written the bundle.</summary>
    public static async Task<ArchiveForm> FormAsync(
        DemoSite site,
        BundleDraft drafts,
        string serial
    ) =>
        new()
        {
            Hash = (
                await drafts.FindAsync(await IdAsync(site, serial), CancellationToken.None)
            )?.Hash,
            Password = DemoPeople.Password,
        };

    public static Task<Guid> IdAsync(DemoSite site, string serial) =>
        site.ReadAsync(db =>
            db.Vessels.Where(v => v.Serial == serial).Select(v => v.Id).SingleAsync()
        );

    public static async Task<Actor> ActorAsync(DemoSite site, DemoPerson person) =>
        (
            await site.ReadAsync(db =>
                db.People.SingleAsync(p => p.PrintedName == person.PrintedName)
            )
        ).AsActor();
}
