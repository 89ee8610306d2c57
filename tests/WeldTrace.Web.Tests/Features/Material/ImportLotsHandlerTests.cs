using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Material;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Material.Import;
using WeldTrace.Web.Importing;

namespace WeldTrace.Web.Tests.Features.Material;

public sealed class ImportLotsHandlerTests(PostgresServerFixture server)
{
    [Fact]
    public async Task HandleAsync_Confirmed_EntersLotsWithJudgedResults()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        await site.Database.AddAsync(SampleMaterial.Minima());

        var done = await ImportAsync(
            site,
            """
            number,alloy,temper,cast,form,inspection document,type,product standard,Rm MPa,Rp0.2 MPa,A %,minima,standing
            L-1,6061,T6,C-1,plate,IC-1,3.1,ASTM B209,300,270,15,minima-3al,3.1 on file
            L-2,6061,T6,C-2,plate,IC-2,3.1,ASTM B209,250,240,15,MINIMA-3AL,
            L-3,6082,T6,C-3,bar,IC-3,,,,,,,
            """
        );

        Assert.True(done.IsDone);
        var lots = await site.Database.ReadAsync(db =>
            db.MaterialLots.OrderBy(l => l.Number).ToListAsync()
        );
        Assert.Equal([false, true], lots.Take(2).Select(l => l.Results!.Misses));
        Assert.Equal(InspectionDocumentType.Type31, lots[0].Document!.Type);
        Assert.Null(lots[2].Document);
        Assert.Empty(await site.LedgerProblemsAsync());
    }

    [Fact]
    public async Task HandleAsync_ManyFaults_TellsEachLine()
    {
        await using var site = await WorkingSite.OpenAsync(server);

        var refused = await ImportAsync(
            site,
            """
            number,alloy,temper,cast,form,inspection document,type,product standard,Rm MPa,minima
            L-1,,T6,C-1,plate,IC-1,,,,
            L-2,6061,T6,C-2,plate,IC-2,4.1,EN 485,,
            L-3,6061,T6,C-3,plate,IC-3,3.1,EN 485,strong,
            L-4,6061,T6,C-4,plate,IC-4,,,300,
            L-5,6061,T6,C-5,plate,IC-5,3.1,EN 485,300,MIN-9
            """
        );

        string[] expected =
        [
            "Line 2: Give the alloy",
            "Line 3: '4.1' is no type",
            "Line 4: Rm: 'strong' is no number",
            "Line 5: File the inspection document first",
            "Line 6: There is no table of minima 'MIN-9'",
        ];
        Assert.Equal(expected.Length, refused.Problems.Count);
        Assert.All(
            expected.Zip(refused.Problems),
            pair => Assert.StartsWith(pair.First, pair.Second.Sentence, StringComparison.Ordinal)
        );
        Assert.Equal(0, await site.Database.ReadAsync(db => db.MaterialLots.CountAsync()));
    }

    private static Task<ImportResult> ImportAsync(WorkingSite site, string text) =>
        new ImportLotsHandler(site.Database, site.Clock).HandleAsync(
            text,
            true,
            SamplePeople.Inspector,
            CancellationToken.None
        );
}
