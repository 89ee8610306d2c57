using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Qualification;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;

namespace WeldTrace.Web.Tests.Features.Qualifications;

public sealed class TestPieceHandlerTests(PostgresServerFixture server)
{
    private static CancellationToken Cancellation => QualificationShop.Cancellation;

    [Fact]
    public async Task Begin_FormSentTwice_BeginsOnePiece()
    {
        await using var shop = await QualificationShop.OpenAsync(server);
        var record = await shop.PlannedAsync();
        var form = shop.BeginForm();

        var first = await shop.Beginning.HandleAsync(
            record.Id,
            "1",
            form,
            shop.Operator,
            Cancellation
        );
        var second = await shop.Beginning.HandleAsync(
            record.Id,
            "1",
            form,
            shop.Operator,
            Cancellation
        );

        Assert.True(first.IsAccepted);
        Assert.Equal("F1", Assert.Single(second.Refusals).Code);
        Assert.Equal(
            1,
            await shop.Site.Database.ReadAsync(db => db.TestPieces.CountAsync(Cancellation))
        );
    }

    [Fact]
    public async Task Begin_NothingChosen_NamesTheFields()
    {
        await using var shop = await QualificationShop.OpenAsync(server);
        var record = await shop.PlannedAsync();

        var refused = await shop.Beginning.HandleAsync(
            record.Id,
            "1",
            new() { Machine = "Gantry 9", Tool = "T-0" },
            shop.Operator,
            Cancellation
        );

        Assert.Equal(
            ["Lots", "Machine", "Machine", "Tool"],
            refused.Refusals.Select(r => r.Field).Order()
        );
    }

    [Fact]
    public async Task Begin_UnknownPiece_Refused()
    {
        await using var shop = await QualificationShop.OpenAsync(server);
        var record = await shop.PlannedAsync();

        var refused = await shop.Beginning.HandleAsync(
            record.Id,
            "7",
            shop.BeginForm(),
            shop.Operator,
            Cancellation
        );

        Assert.Equal("piece", Assert.Single(refused.Refusals).Code);
    }

    [Fact]
    public async Task Finish_GoodLog_ChargesToolKeepsSamplesAndSigns()
    {
        await using var shop = await QualificationShop.OpenAsync(server);
        var record = await shop.PlannedAsync();

        var piece = await shop.WeldedAsync(record, "1");

        Assert.Equal(TestPieceState.Welded, piece.State);
        Assert.Empty(TestPieceRules.Faults(piece, record.Plan.Pieces[0]));
        var tool = await shop.Site.ReadAsync<Domain.Tooling.Tool>(shop.Tool.Id);
        Assert.Equal(200, tool.Used.Millimetres, 3.0);
        await using var db = shop.Site.Database.CreateDbContext();
        Assert.True(await db.ProcessLogs.AnyAsync(l => l.RunId == piece.Id, Cancellation));
        Assert.Equal(
            TestPiece.WeldedMeaning,
            (await db.Signatures.SingleAsync(s => s.SignedId == piece.Id, Cancellation)).Meaning
        );
    }

    [Theory]
    [InlineData("no table at all")]
    [InlineData("a,b\n1,2\n3,4\n")]
    public async Task Finish_FileThatIsNoLog_IsRefusedAndThePieceStaysOpen(string content)
    {
        await using var shop = await QualificationShop.OpenAsync(server);
        var record = await shop.PlannedAsync();
        var piece = await shop.BegunAsync(record);

        var refused = await shop.FinishAsync(piece.Id, QualificationShop.File(content));

        Assert.All(refused.Refusals, r => Assert.Equal("Log", r.Field));
        Assert.NotEmpty(refused.Refusals);
        Assert.Equal(
            TestPieceState.Welding,
            (await shop.Site.ReadAsync<TestPiece>(piece.Id)).State
        );
    }

    [Fact]
    public async Task Finish_WithoutFileOrWithWrongPassword_ChangesNothing()
    {
        await using var shop = await QualificationShop.OpenAsync(server);
        var record = await shop.PlannedAsync();
        var piece = await shop.BegunAsync(record);

        var none = await shop.FinishAsync(piece.Id, null);
        var wrong = await shop.FinishAsync(
            piece.Id,
            QualificationShop.Log(record.Plan.Pieces[0]),
            "wrong"
        );

        Assert.Equal("Log", Assert.Single(none.Refusals).Field);
        Assert.Equal("Password", Assert.Single(wrong.Refusals).Field);
        Assert.Equal(1, await shop.Site.EntriesAsync(piece.Id));
    }

    [Fact]
    public async Task Discard_Spoilt_LetsThePieceBeWeldedAgain()
    {
        await using var shop = await QualificationShop.OpenAsync(server);
        var record = await shop.PlannedAsync();
        var piece = await shop.BegunAsync(record);

        Accept.All(
            await shop.Pieces.DiscardAsync(
                piece.Id,
                new()
                {
                    Travelled = "80",
                    Reason = "Pin broke.",
                    Password = WorkingSite.Password,
                },
                shop.Operator,
                Cancellation
            )
        );

        await shop.WeldedAsync(record, "1");
        var view = await shop.Reader.FindAsync(record.Id, Cancellation);
        var standing = view!.Standing.Pieces[0];
        Assert.NotNull(standing.Welded);
        Assert.Equal(piece.Id, Assert.Single(standing.Earlier).Id);
    }
}
