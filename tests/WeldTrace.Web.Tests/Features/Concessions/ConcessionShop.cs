using WeldTrace.Domain.Concessions;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.Vessels;
using WeldTrace.Engineering.Paths;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Concessions.Ask;
using WeldTrace.Web.Features.Concessions.Show;
using WeldTrace.Web.Features.Welding;

namespace WeldTrace.Web.Tests.Features.Concessions;

/// <summary>A shop whose operator holds no certificate: F4 forbids the run until two persons sign.</summary>
internal sealed record ConcessionShop(
    WorkingSite Site,
    Vessel Vessel,
    Tool Tool,
    Actor Engineer,
    Actor QualityManager,
    Actor Welder
) : IAsyncDisposable
{
    public const string Machine = "Gantry 2";

    public static async Task<ConcessionShop> OpenAsync(PostgresServerFixture server)
    {
        var site = await WorkingSite.OpenAsync(server);
        var toolDesign = SampleTools.Design();
        var (design, lot) = (SampleDesigns.Released(), SampleMaterial.Lot());
        var shop = new ConcessionShop(
            site,
            SampleVessels.Planned(design, lot),
            SampleTools.InService(toolDesign),
            await site.EnterAsync("Ada Brandt", Role.Engineer),
            await site.EnterAsync("Gil Navarro", Role.QualityManager),
            await site.EnterAsync("Olaf Ruud", Role.Operator)
        );
        await site.Database.AddAsync(
            toolDesign,
            design,
            lot,
            SampleProcedures.Released(toolDesign),
            SampleMachines.Entered(Machine),
            shop.Tool,
            shop.Vessel
        );
        return shop;
    }

    public static AskConcessionForm Form(ConcessionShop shop) =>
        new()
        {
            Machine = Machine,
            Tool = shop.Tool.Mark,
            Welder = shop.Welder.PersonId,
            Reason = "Qualified at the other works; the papers are on their way.",
            Password = WorkingSite.Password,
        };

    public static Task<Outcome<Concession>> AskAsync(
        ConcessionShop shop,
        AskConcessionForm form,
        string rule = "F4",
        int step = 10,
        Actor? actor = null
    ) =>
        new AskConcessionHandler(
            shop.Site.Database,
            shop.Site.Passwords,
            shop.Site.Clock
        ).HandleAsync(
            shop.Vessel.Serial,
            step,
            rule,
            form,
            actor ?? shop.Engineer,
            CancellationToken.None
        );

    public static Task<Outcome> GrantAsync(ConcessionShop shop, Guid id, string? password) =>
        shop.Handler.GrantAsync(
            id,
            new() { Password = password },
            shop.QualityManager,
            CancellationToken.None
        );

    public static Task<Outcome> StartAsync(ConcessionShop shop) =>
        new StartRunHandler(shop.Site.Database, shop.Site.Clock).HandleAsync(
            new(shop.Vessel.Serial, 10),
            new()
            {
                Id = Guid.CreateVersion7(shop.Site.Clock.GetUtcNow()),
                Tool = shop.Tool.Mark,
                Machine = Machine,
                Travel = RotationSense.CounterClockwise,
                JointPreparation = true,
                FitUp = true,
                Parameters = true,
            },
            shop.Welder,
            CancellationToken.None
        );

    public ConcessionHandler Handler => new(Site.Database, Site.Desk);

    public ValueTask DisposeAsync() => Site.DisposeAsync();
}
