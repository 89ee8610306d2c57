using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Records;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Equipment.ImportInstruments;
using WeldTrace.Web.Importing;

namespace WeldTrace.Web.Tests.Features.Equipment;

public sealed class ImportInstrumentsHandlerTests(PostgresServerFixture server)
{
    private const string Good = """
        mark,measures,description,unit,from,to,resolution,largest error,interval months,indication only
        G-61,pressure,"Test gauge, class 0.6",bar,,160,0.5,1,,
        TH-61,Temperature,Surface thermometer,°C,-10,60,0.1,0.3,6,yes
        """;

    [Fact]
    public async Task HandleAsync_Looked_SavesNothing()
    {
        await using var site = await WorkingSite.OpenAsync(server);

        var seen = await ImportAsync(site, Good, isConfirmed: false);

        Assert.Equal(["G-61", "TH-61"], seen.Lines.Select(l => l.Name));
        Assert.Empty(seen.Problems);
        Assert.False(seen.IsDone);
        Assert.Equal(0, await CountAsync(site));
    }

    [Fact]
    public async Task HandleAsync_Confirmed_EntersThemWithTheirLedgerEntries()
    {
        await using var site = await WorkingSite.OpenAsync(server);

        var done = await ImportAsync(site, Good);

        Assert.True(done.IsDone);
        var entered = await site.Database.ReadAsync(db =>
            db.Instruments.OrderBy(i => i.Mark).ToListAsync()
        );
        Assert.Equal(
            [InstrumentKind.Pressure, InstrumentKind.Temperature],
            entered.Select(i => i.Measures)
        );
        Assert.Equal([12, 6], entered.Select(i => i.Text.IntervalMonths));
        Assert.Equal([false, true], entered.Select(i => i.Text.IsIndicationOnly));
        Assert.Equal("0", entered[0].Text.Lower.Digits);
        Assert.Empty(await site.LedgerProblemsAsync());
    }

    [Fact]
    public async Task HandleAsync_ManyFaults_TellsEachLineAndEntersNone()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        Assert.True((await ImportAsync(site, Good)).IsDone);

        var refused = await ImportAsync(
            site,
            """
            mark,measures,description,unit,from,to,resolution,largest error
            G-61,pressure,Test gauge,bar,0,160,0.5,1
            G-62,weight,Scale,kg,0,160,0.5,1
            G-63,pressure,Test gauge,bar,0,plenty,0.5,1
            G-64,pressure,Test gauge,bar,160,0,0.5,1
            G-65,pressure,Test gauge,bar,0,160,0.5,1
            G-65,pressure,Test gauge,bar,0,160,0.5,1
            """
        );

        Assert.Equal(
            [2, 3, 4, 5, 7],
            refused.Lines.Where(l => l.Problems.Count > 0).Select(l => l.Line)
        );
        Assert.Equal(2, await CountAsync(site));
    }

    [Fact]
    public async Task HandleAsync_Operator_Refused()
    {
        await using var site = await WorkingSite.OpenAsync(server);

        var refused = await ImportAsync(site, Good, actor: SamplePeople.Operator);

        Assert.Equal(2, refused.Problems.Count);
        Assert.Equal(0, await CountAsync(site));
    }

    private static Task<int> CountAsync(WorkingSite site) =>
        site.Database.ReadAsync(db => db.Instruments.CountAsync());

    private static Task<ImportResult> ImportAsync(
        WorkingSite site,
        string text,
        bool isConfirmed = true,
        Actor? actor = null
    ) =>
        new ImportInstrumentsHandler(site.Database, site.Clock).HandleAsync(
            text,
            isConfirmed,
            actor ?? SamplePeople.QualityManager,
            CancellationToken.None
        );
}
