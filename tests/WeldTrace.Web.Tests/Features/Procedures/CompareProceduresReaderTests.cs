using WeldTrace.Engineering.Quantities;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Procedures.Compare;

namespace WeldTrace.Web.Tests.Features.Procedures;

public sealed class CompareProceduresReaderTests(PostgresServerFixture server)
{
    [Fact]
    public async Task FindAsync_TwoRevisionsEitherWayRound_PutsTheEarlierOneLeft()
    {
        await using var database = await SiteDatabase.CreateAsync(server);
        var tool = SampleTools.Design();
        var first = SampleProcedures.Draft(tool);
        var second = Accept.Value(
            first.Revise(2, "thicker", SamplePeople.Engineer, SampleTime.Start)
        );
        Accept.All(
            second.Edit(
                second.Title,
                second.Content with
                {
                    Thickness = Length.FromMillimetres(4),
                },
                SamplePeople.Engineer,
                SampleTime.Start
            )
        );
        await database.AddAsync(tool, first, second);

        var pair = await new CompareProceduresReader(database).FindAsync(
            second.Id,
            first.Id,
            CancellationToken.None
        );

        Assert.Equal((first.Id, second.Id), (pair!.Left.Id, pair.Right.Id));
        var changed = Assert.Single(pair.Lines, l => l.IsChanged);
        Assert.Equal(("3 mm", "4 mm", true), (changed.Left, changed.Right, changed.IsEssential));
    }

    [Fact]
    public async Task FindAsync_OtherToolDesign_ComparesItsGeometry()
    {
        await using var database = await SiteDatabase.CreateAsync(server);
        var (tool, other) = (
            SampleTools.Design(),
            SampleTools.Design("TD-16", pinMillimetres: 3.2)
        );
        var first = SampleProcedures.Draft(tool);
        var second = Accept.Value(
            first.Revise(2, "shorter pin", SamplePeople.Engineer, SampleTime.Start)
        );
        Accept.All(
            second.Edit(
                second.Title,
                second.Content with
                {
                    ToolDesignId = other.Id,
                    ToolDesignLabel = other.Label,
                },
                SamplePeople.Engineer,
                SampleTime.Start
            )
        );
        await database.AddAsync(tool, other, first, second);

        var pair = await new CompareProceduresReader(database).FindAsync(
            first.Id,
            second.Id,
            CancellationToken.None
        );

        var length = Assert.Single(pair!.Lines, l => l.Name == "Pin length");
        Assert.Equal(("3 mm", "3.2 mm", true), (length.Left, length.Right, length.IsChanged));
    }

    [Fact]
    public async Task FindAsync_OneOfThemUnknown_FindsNothing()
    {
        await using var database = await SiteDatabase.CreateAsync(server);
        var tool = SampleTools.Design();
        var draft = SampleProcedures.Draft(tool);
        await database.AddAsync(tool, draft);

        Assert.Null(
            await new CompareProceduresReader(database).FindAsync(
                draft.Id,
                tool.Id,
                CancellationToken.None
            )
        );
    }
}
