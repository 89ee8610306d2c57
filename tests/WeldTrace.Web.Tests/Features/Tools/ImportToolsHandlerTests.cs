using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Tools.Import;
using WeldTrace.Web.Importing;

namespace WeldTrace.Web.Tests.Features.Tools;

public sealed class ImportToolsHandlerTests(PostgresServerFixture server)
{
    private const string Good = """
        mark;design;used m;used source;retired for;seen
        T-1;TD-15 rev A;;;;
        T-2;td-15;12,5;Tool book 3;;
        T-3;TD-15;40;Tool book 2;wear;Threads gone
        """;

    [Fact]
    public async Task HandleAsync_Looking_EntersNothing()
    {
        await using var site = await OpenAsync(server);

        var looked = await ImportAsync(site, Good, isConfirmed: false);

        Assert.True(looked.IsClean);
        Assert.Equal(["T-1", "T-2", "T-3"], looked.Lines.Select(l => l.Name));
        Assert.Equal(0, await site.Database.ReadAsync(db => db.Tools.CountAsync()));
    }

    [Fact]
    public async Task HandleAsync_Confirmed_EntersEachWithItsLedgerEntry()
    {
        await using var site = await OpenAsync(server);

        var done = await ImportAsync(site, Good, isConfirmed: true);

        Assert.True(done.IsDone);
        var tools = await site.Database.ReadAsync(db =>
            db.Tools.OrderBy(t => t.Mark).ToListAsync()
        );
        Assert.Equal([0, 12.5, 40], tools.Select(t => t.Used.Metres));
        Assert.Equal(RetirementReason.Wear, tools[2].Retirement);
        Assert.All(tools, t => Assert.Equal(1, t.Version));
        Assert.Empty(await site.LedgerProblemsAsync());
    }

    [Fact]
    public async Task HandleAsync_ManyFaults_TellsEachLineAndEntersNothing()
    {
        await using var site = await OpenAsync(server);
        await site.Database.AddAsync(SampleTools.InService(SampleTools.Design("TD-15"), "T-9"));

        var refused = await ImportAsync(
            site,
            """
            mark,design,used m,retired for,seen
            T-1,TD-15,,,
            T-1,TD-15,,,
            T-9,TD-15,,,
            ,TD-15,,,
            T-2,TD-99,x,rust,
            T-3,TD-15,many,,
            T-4,TD-15,-2,,
            T-5,TD-15,,rust,
            T-6,TD-15,,wear,
            """,
            isConfirmed: true
        );

        Assert.False(refused.IsDone);
        string[] expected =
        [
            "Line 3: 'T-1' stands on line 2 already",
            "Line 4: 'T-9' is entered already",
            "Line 5: Give the mark",
            "Line 6: There is no tool design 'TD-99'",
            "Line 6: used m: 'x' is no number",
            "Line 6: 'rust' is no cause",
            "Line 7: used m: 'many' is no number",
            "Line 8: Give the metres welded before",
            "Line 9: 'rust' is no cause",
            "Line 10: Say what was seen",
        ];
        Assert.Equal(expected.Length, refused.Problems.Count);
        Assert.All(
            expected.Zip(refused.Problems),
            pair => Assert.StartsWith(pair.First, pair.Second.Sentence, StringComparison.Ordinal)
        );
        Assert.Equal(1, await site.Database.ReadAsync(db => db.Tools.CountAsync()));
    }

    [Fact]
    public async Task HandleAsync_Operator_RefusedOnEachLine()
    {
        await using var site = await OpenAsync(server);

        var refused = await ImportAsync(
            site,
            "mark,design\nT-1,TD-15",
            isConfirmed: true,
            SamplePeople.Operator
        );

        Assert.Equal("role", Assert.Single(refused.Problems).Code);
    }

    private static async Task<WorkingSite> OpenAsync(PostgresServerFixture server)
    {
        var site = await WorkingSite.OpenAsync(server);
        await site.Database.AddAsync(SampleTools.Design("TD-15"));
        return site;
    }

    private static Task<ImportResult> ImportAsync(
        WorkingSite site,
        string text,
        bool isConfirmed,
        Actor? actor = null
    ) =>
        new ImportToolsHandler(site.Database, site.Clock).HandleAsync(
            text,
            isConfirmed,
            actor ?? SamplePeople.Engineer,
            CancellationToken.None
        );
}
