using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Procedures;
using WeldTrace.Persistence;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Procedures;
using WeldTrace.Web.Tests.Features.Welding;

namespace WeldTrace.Web.Tests.Features.Procedures;

public sealed class ProcedurePageReaderTests(PostgresServerFixture server)
{
    [Fact]
    public async Task FindAsync_SupersededRevision_ListsTheVesselsWeldedByIt()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        await shop.EndedAsync();
        var first = await shop.Database.ReadAsync(db => db.ProcedureRevisions.SingleAsync());
        var reader = new ProcedurePageReader(shop.Database);
        Assert.Empty((await reader.FindAsync(first.Id, CancellationToken.None))!.VesselsWelded);

        var second = await SupersedeAsync(shop);

        var old = await reader.FindAsync(first.Id, CancellationToken.None);
        Assert.Equal(ProcedureState.Superseded, old!.Revision.State);
        Assert.Equal(shop.Vessel.Serial, Assert.Single(old.VesselsWelded).Serial);
        var current = await reader.FindAsync(second.Id, CancellationToken.None);
        Assert.Empty(current!.VesselsWelded);
    }

    private static async Task<ProcedureRevision> SupersedeAsync(WeldShop shop)
    {
        await using var db = shop.Database.CreateDbContext();
        var first = await db.ProcedureRevisions.SingleAsync();
        var tool = await db.ToolDesigns.SingleAsync();
        var second = Accept.Value(
            first.Revise(2, "Wider window.", SamplePeople.Engineer, shop.Clock.GetUtcNow())
        );
        Accept.All(second.PutOnTrial(SamplePeople.Engineer, shop.Clock.GetUtcNow()));
        SampleProcedures.Release(second, SampleQualifications.Signed(second, tool).Record, first);
        db.Add(second);
        Accept.All(await db.SaveAsync(CancellationToken.None));
        return second;
    }
}
