using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Conformity;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Procedures.Show;
using WeldTrace.Web.Features.Qualifications.Enter;
using WeldTrace.Web.Features.Qualifications.Show;

namespace WeldTrace.Web.Tests.Features.Qualifications;

public sealed class QualificationHandlerTests(PostgresServerFixture server)
{
    private static CancellationToken Cancellation => QualificationShop.Cancellation;

    [Fact]
    public async Task Journey_FromPlanToReleased_KeepsLedgerAndRangeOnTheProcedure()
    {
        await using var shop = await QualificationShop.OpenAsync(server);
        var record = await shop.PlannedAsync();
        await shop.WeldedAsync(record, "1");
        await shop.WeldedAsync(record, "2");
        foreach (var planned in record.Plan.Tests)
        {
            Accept.Value(await shop.EnterAsync(record, planned.Id));
        }

        Accept.All(await SignAsync(shop, record, shop.Quality));
        Accept.All(
            await MoveAsync(shop, "qualify", shop.Engineer),
            await MoveAsync(shop, "release", shop.Quality)
        );

        var released = await shop.Site.ReadAsync<ProcedureRevision>(shop.Revision.Id);
        Assert.Equal(ProcedureState.Released, released.State);
        Assert.Equal(record.Number, released.Qualified?.Number);
        Assert.Equal("Test works", released.Qualified?.Range.Fabricator);
        Assert.Empty(await shop.Site.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Qualify_WithoutSignedRecord_IsRefusedWithTheReason()
    {
        await using var shop = await QualificationShop.OpenAsync(server);
        var none = await MoveAsync(shop, "qualify", shop.Engineer);
        await shop.PlannedAsync();
        var open = await MoveAsync(shop, "qualify", shop.Engineer);

        Assert.Contains(
            "no qualification record",
            none.Refusals[0].Sentence,
            StringComparison.Ordinal
        );
        Assert.Contains("is open", open.Refusals[0].Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Plan_FormWithoutTables_NamesEach()
    {
        await using var shop = await QualificationShop.OpenAsync(server);
        var form = await shop.PlanFormAsync();
        (form.Groups, form.QualificationRange) = (Guid.Empty, form.Groups);
        form.PieceLength = "long";

        var refused = await shop.Planning.HandleAsync(
            shop.Revision.Id,
            form,
            shop.Engineer,
            Cancellation
        );

        Assert.Equal(
            ["Groups", "PieceLength", "QualificationRange"],
            refused.Refusals.Select(r => r.Field).Order()
        );
    }

    [Fact]
    public async Task Plan_NumberTaken_NamesTheField()
    {
        await using var shop = await QualificationShop.OpenAsync(server);
        var first = await shop.PlannedAsync();
        var form = await shop.PlanFormAsync();
        form.Number = first.Number;

        var refused = await shop.Planning.HandleAsync(
            shop.Revision.Id,
            form,
            shop.Engineer,
            Cancellation
        );

        Assert.Equal("Number", Assert.Single(refused.Refusals).Field);
    }

    [Fact]
    public async Task Plan_ByOperator_Refused()
    {
        await using var shop = await QualificationShop.OpenAsync(server);

        var refused = await shop.Planning.HandleAsync(
            shop.Revision.Id,
            await shop.PlanFormAsync(),
            shop.Operator,
            Cancellation
        );

        Assert.Equal("role", Assert.Single(refused.Refusals).Code);
    }

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
        var view = await shop.Qualifications.FindAsync(record.Id, Cancellation);
        var standing = view!.Standing.Pieces[0];
        Assert.NotNull(standing.Welded);
        Assert.Equal(piece.Id, Assert.Single(standing.Earlier).Id);
    }

    [Fact]
    public async Task Enter_ImperfectionBeyondTheLimit_FailsAndAsksForReplacements()
    {
        await using var shop = await QualificationShop.OpenAsync(server);
        var record = await shop.PlannedAsync();
        await shop.WeldedAsync(record, "1");
        var form = shop.ResultForm();
        form.Imperfections = [new ImperfectionRow { Name = "cavity", Size = "0.9" }];

        var entered = Accept.Value(await shop.EnterAsync(record, "1-MA1", form));

        Assert.Equal(Verdict.Fail, entered.Verdict);
        var view = await shop.Qualifications.FindAsync(record.Id, Cancellation);
        Assert.Equal(
            PlannedTestState.NeedsReplacements,
            view!.Standing.Tests.Single(t => t.Planned.Id == "1-MA1").State
        );
    }

    [Fact]
    public async Task Enter_ImperfectionWithoutLimit_NamesItsField()
    {
        await using var shop = await QualificationShop.OpenAsync(server);
        var record = await shop.PlannedAsync();
        await shop.WeldedAsync(record, "1");
        var form = shop.ResultForm();
        form.Imperfections = [new ImperfectionRow { Name = "hook", Size = "0.2" }];

        var refused = await shop.EnterAsync(record, "1-MA1", form);

        Assert.Equal("Imperfections[0].DesignLimit", Assert.Single(refused.Refusals).Field);
    }

    [Fact]
    public async Task Enter_ByEngineerWithoutCertificate_IsRefusedForRoleAndF19()
    {
        await using var shop = await QualificationShop.OpenAsync(server);
        var record = await shop.PlannedAsync();
        await shop.WeldedAsync(record, "1");

        var refused = await shop.EnterAsync(record, "1-VT1", null, shop.Engineer);

        Assert.Equal(["F19", "role"], refused.Refusals.Select(r => r.Code).Order());
    }

    [Fact]
    public async Task Enter_UnknownInstrument_IsRefusedByF13()
    {
        await using var shop = await QualificationShop.OpenAsync(server);
        var record = await shop.PlannedAsync();
        await shop.WeldedAsync(record, "1");
        var form = shop.ResultForm();
        form.Instrument = "MS-99";

        var refused = await shop.EnterAsync(record, "1-MA1", form);

        Assert.Equal("F13", Assert.Single(refused.Refusals).Code);
    }

    [Fact]
    public async Task Result_OnceSigned_CannotBeChangedInTheDatabase()
    {
        await using var shop = await QualificationShop.OpenAsync(server);
        var record = await shop.PlannedAsync();
        await shop.WeldedAsync(record, "1");
        Accept.Value(await shop.EnterAsync(record, "1-VT1"));

        await using var db = shop.Site.Database.CreateDbContext();
        await Assert.ThrowsAnyAsync<Npgsql.PostgresException>(() =>
            db.Database.ExecuteSqlRawAsync(
                "UPDATE specimen_tests SET verdict = 'Pass'",
                Cancellation
            )
        );
    }

    [Fact]
    public async Task Sign_Incomplete_TellsWhatIsMissing()
    {
        await using var shop = await QualificationShop.OpenAsync(server);
        var record = await shop.PlannedAsync();

        var refused = await SignAsync(shop, record, shop.Quality);

        Assert.Equal(6, refused.Refusals.Count(r => r.Code == "incomplete"));
    }

    [Fact]
    public async Task Abandon_ByEngineer_ClosesTheRecord()
    {
        await using var shop = await QualificationShop.OpenAsync(server);
        var record = await shop.PlannedAsync();

        Accept.All(
            await shop.Qualifications.AbandonAsync(
                record.Id,
                new AbandonQualificationForm
                {
                    Reason = "Wrong rule set.",
                    Password = WorkingSite.Password,
                },
                shop.Engineer,
                Cancellation
            )
        );

        var refused = await shop.Beginning.HandleAsync(
            record.Id,
            "1",
            shop.BeginForm(),
            shop.Operator,
            Cancellation
        );
        Assert.Equal("F1", Assert.Single(refused.Refusals).Code);
    }

    private static Task<Outcome> SignAsync(
        QualificationShop shop,
        QualificationRecord record,
        Actor actor
    ) =>
        shop.Qualifications.SignAsync(
            record.Id,
            new SignQualificationForm { Password = WorkingSite.Password },
            actor,
            Cancellation
        );

    private static Task<Outcome> MoveAsync(QualificationShop shop, string key, Actor actor) =>
        new MoveProcedureHandler(
            shop.Site.Database,
            shop.Site.Passwords,
            shop.Site.Clock
        ).HandleAsync(
            shop.Revision.Id,
            new MoveProcedureForm { Key = key, Password = WorkingSite.Password },
            actor,
            Cancellation
        );
}
