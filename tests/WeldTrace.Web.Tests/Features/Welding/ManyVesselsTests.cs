using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Welding;
using WeldTrace.Persistence.Loading;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Filling;
using WeldTrace.TestSupport.Records;

namespace WeldTrace.Web.Tests.Features.Welding;

/// <summary>What the benchmarks fill their databases with are records like any other.</summary>
public sealed class ManyVesselsTests(PostgresServerFixture server)
{
    private const int Copies = 60;

    [Fact]
    public async Task AddAsync_CopiesEachRecordOfTheVesselWithAnIdOfItsOwn()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        await shop.EndedAsync();

        var (written, filling) = await FillAsync(shop);

        // The vessel, its run, and three tools.
        Assert.Equal((2 * Copies) + 3, written);
        await using var db = shop.Database.CreateDbContext();
        var runs = await db.WeldRuns.ToListAsync(TestContext.Current.CancellationToken);
        var vessels = await db.Vessels.ToListAsync(TestContext.Current.CancellationToken);
        Assert.Equal(Copies + 1, vessels.Select(v => v.Id).Distinct().Count());
        Assert.Equal(vessels.Select(v => v.Id).Order(), runs.Select(r => r.VesselId).Order());
        Assert.Equal(4, runs.Select(r => r.ToolId).Distinct().Count());
        Assert.Equal(
            runs.Select(r => r.ToolId).Distinct().Order(),
            (
                await db.Tools.Select(t => t.Id).ToListAsync(TestContext.Current.CancellationToken)
            ).Order()
        );
        var own = runs.Single(r => r.VesselSerial == shop.Vessel.Serial).StartedAt;
        var first = runs.Single(r => r.VesselSerial == filling.SerialOf(0)).StartedAt;
        Assert.Equal(filling.Span, own - first);
    }

    [Fact]
    public async Task AddAsync_TwoPartsOfOneVessel_HaveSerialsOfTheirOwnInEachCopy()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var lot = SampleMaterial.Lot();
        CutComponent[] parts =
        [
            SampleMaterial.Component(lot, "S-0001"),
            SampleMaterial.Component(lot, "S-0002"),
        ];
        foreach (var part in parts)
        {
            Accept.All(part.BuildInto(shop.Vessel, SamplePeople.Engineer, shop.Clock.GetUtcNow()));
        }

        await shop.Database.AddAsync(parts);

        await FillAsync(shop);

        var serials = await shop.Database.ReadAsync(db =>
            db.Components.Select(c => c.Serial).ToListAsync(TestContext.Current.CancellationToken)
        );
        Assert.Equal(2 * (Copies + 1), serials.Distinct().Count());
    }

    [Fact]
    public async Task AddAsync_ACopyIsWeldedOnLikeTheVesselItself()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        await shop.EndedAsync();
        var (_, filling) = await FillAsync(shop);

        var (own, copy) = (
            await JudgeAsync(shop, shop.Vessel.Serial),
            await JudgeAsync(shop, filling.SerialOf(Copies - 1))
        );

        Assert.Equal(own, copy);
    }

    private static async Task<(long Written, Filling Filling)> FillAsync(WeldShop shop)
    {
        var filling = new Filling(shop.Vessel.Serial, Copies)
        {
            Shared = [SharedRecord.ChangesEvery(shop.Tool.Id, 20) with { Table = "tools" }],
        };
        return (await ManyVessels.AddAsync(shop.Database.OwnerConnectionString, filling), filling);
    }

    // F6 left out: the tool last welded the vessel itself, and is to be looked at before another joint.
    private static async Task<IReadOnlyList<(string Rule, RuleStanding Standing)>> JudgeAsync(
        WeldShop shop,
        string serial
    )
    {
        await using var db = shop.Database.CreateDbContext();
        var facts = await db.FindWeldGateFactsAsync(
            serial,
            10,
            new(shop.Tool.Mark, shop.Machine.Name, SamplePeople.Operator, shop.Clock.GetUtcNow()),
            TestContext.Current.CancellationToken
        );
        return
        [
            .. WeldGate
                .Judge(facts!)
                .Where(v => v.RuleId != "F6")
                .Select(v => (v.RuleId, v.Standing)),
        ];
    }
}
