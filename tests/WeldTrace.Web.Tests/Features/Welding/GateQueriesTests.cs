using System.Diagnostics;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.ProductionTesting;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Persistence.Loading;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;

namespace WeldTrace.Web.Tests.Features.Welding;

/// <summary>The gate goes to the database once, whatever the vessel's history.</summary>
public sealed class GateQueriesTests(PostgresServerFixture server)
{
    [Fact]
    public async Task Gate_AsksOnce_BeforeTheFirstRunAndAfterIt()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        // Opens a connection of the pool, which is no question.
        await FactsAsync(shop);

        var (before, _) = await CountAsync(shop);
        await shop.EndedAsync();
        var (after, facts) = await CountAsync(shop);

        Assert.Equal((1, 1), (before, after));
        Assert.Single(facts.Runs);
    }

    /// <summary>What is welded since a production test is found with the rest, and what another machine or procedure did is not.</summary>
    [Fact]
    public async Task Gate_DesignAsksForProductionTests_FindsTheNewestAndWhatFollowedInTheSameQuestion()
    {
        await using var shop = await WeldShop.OpenAsync(
            server,
            content: SampleDesigns.Content() with
            {
                ProductionTests = new ProductionTestRule(
                    Length.FromMetres(100),
                    8,
                    true,
                    true,
                    true,
                    true,
                    "visual, bends, macro",
                    "Class rules Ch. 13 9.2.3"
                ),
            }
        );
        var none = (await FactsAsync(shop)).Production;
        var at = shop.Clock.GetUtcNow();
        var other = SampleMachines.Entered("Gantry 9");
        await shop.Database.AddAsync(
            other,
            await TestAsync(shop, "PT-1", shop.Machine, at.AddHours(-2)),
            await TestAsync(shop, "PT-2", shop.Machine, at.AddHours(-1)),
            await TestAsync(shop, "PT-3", other, at)
        );

        await shop.EndedAsync();
        var (asked, facts) = await CountAsync(shop);

        Assert.Null(none!.Last);
        Assert.Equal(1, asked);
        Assert.Equal("PT-2", facts.Production!.Last!.Mark);
        Assert.Equal(Assert.Single(facts.Runs).PlannedPath, facts.Production.Welded);
        Assert.Equal(facts.Runs[0].StartedAt, facts.Production.FirstRunAt);
        Assert.Equal(
            RuleStanding.Holds,
            WeldGate.Judge(facts).Single(v => v.RuleId == "F21").Standing
        );
    }

    [Fact]
    public async Task Gate_FindsEachKindOfRecord()
    {
        await using var shop = await WeldShop.OpenAsync(server);

        var facts = await FactsAsync(shop);

        Assert.Equal(shop.Vessel.Id, facts.Vessel.Id);
        Assert.Equal(shop.Design.Id, facts.Design.Id);
        Assert.Equal(shop.Tool.Id, facts.Tool?.Id);
        Assert.Equal(shop.Tool.DesignId, facts.ToolDesign?.Id);
        Assert.Equal(shop.Machine.Id, facts.Machine?.Id);
        Assert.Equal(facts.Joint.ProcedureNumber, facts.Revision?.Number);
        Assert.Equal(
            facts.Revision!.Content.DetailsOrNone.Instruments.Select(i => i.Id).Order(),
            facts.Instruments.Select(i => i.Id).Order()
        );
        Assert.NotEmpty(facts.Certificates);
        Assert.Equal(
            shop.Vessel.Components.Select(c => c.MaterialLotId).Distinct(),
            facts.Material.Lots.Select(l => l.Id)
        );
        Assert.All(
            WeldGate.Judge(facts).Where(v => v.RuleId != "F8"),
            v => Assert.NotEqual(RuleStanding.Forbids, v.Standing)
        );
    }

    [Fact]
    public async Task Gate_VesselWasHeatTreated_FindsTheTreatment()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var part = new TreatedPart(shop.Vessel.Id, shop.Vessel.Serial, IsVessel: true);
        await shop.Database.AddAsync(
            Treated("F-1", part),
            Treated("F-2", part with { Id = Guid.CreateVersion7(SampleTime.Start) })
        );

        var facts = await FactsAsync(shop);

        Assert.Equal("F-1", Assert.Single(facts.Material.HeatTreatments).Number);
    }

    [Fact]
    public async Task Gate_AskedInATransaction_SeesWhatItHasWritten()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        await using var db = shop.Database.CreateDbContext();
        var tool = await db.Tools.SingleAsync(
            t => t.Id == shop.Tool.Id,
            TestContext.Current.CancellationToken
        );
        var found = await db
            .Database.CreateExecutionStrategy()
            .ExecuteAsync(async () =>
            {
                await using var transaction = await db.Database.BeginTransactionAsync(
                    TestContext.Current.CancellationToken
                );
                return await db.FindWeldGateFactsAsync(
                    shop.Vessel.Serial,
                    10,
                    Choice(shop),
                    TestContext.Current.CancellationToken
                );
            });

        Assert.Same(tool, found?.Tool);
    }

    private static async Task<(int Asked, WeldGateFacts Facts)> CountAsync(WeldShop shop)
    {
        using var here = new Activity(nameof(GateQueriesTests)).Start();
        var asked = 0;
        using var listener = new ActivityListener
        {
            ShouldListenTo = source => source.Name == "Npgsql",
            Sample = (ref ActivityCreationOptions<ActivityContext> _) =>
                ActivitySamplingResult.AllData,
            ActivityStarted = activity => asked += activity.TraceId == here.TraceId ? 1 : 0,
        };
        ActivitySource.AddActivityListener(listener);
        var facts = await FactsAsync(shop);
        return (asked, facts);
    }

    private static async Task<WeldGateFacts> FactsAsync(WeldShop shop)
    {
        await using var db = shop.Database.CreateDbContext();
        var facts = await db.FindWeldGateFactsAsync(
            shop.Vessel.Serial,
            10,
            Choice(shop),
            TestContext.Current.CancellationToken
        );
        return Assert.IsType<WeldGateFacts>(facts);
    }

    private static async Task<ProductionTest> TestAsync(
        WeldShop shop,
        string mark,
        Machine machine,
        DateTimeOffset at
    ) =>
        Accept.Value(
            ProductionTest.Record(
                mark,
                machine,
                await shop.Database.ReadAsync(db =>
                    db.ProcedureRevisions.SingleAsync(TestContext.Current.CancellationToken)
                ),
                shop.Tool,
                "Visual without finding.",
                true,
                SampleTests.Examiner,
                SamplePeople.Inspector,
                at
            )
        );

    private static HeatTreatment Treated(string number, TreatedPart part) =>
        Accept.Value(SampleHeat.Enter(number, SampleHeat.Kept("171", "178", "180"), [part]));

    private static WeldChoice Choice(WeldShop shop) =>
        new(shop.Tool.Mark, shop.Machine.Name, SamplePeople.Operator, shop.Clock.GetUtcNow());
}
