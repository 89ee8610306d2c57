using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Procedures.Show;
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
    public async Task Sign_Incomplete_TellsWhatIsMissing()
    {
        await using var shop = await QualificationShop.OpenAsync(server);
        var record = await shop.PlannedAsync();

        var refused = await SignAsync(shop, record, shop.Quality);

        Assert.Equal(6, refused.Refusals.Count(r => r.Code == "incomplete"));
    }

    [Fact]
    public async Task Sign_ByARoleThatMayNot_IsRefused()
    {
        await using var shop = await QualificationShop.OpenAsync(server);
        var record = await shop.PlannedAsync();

        var byInspector = await SignAsync(shop, record, shop.Inspector);
        var byOperator = await SignAsync(shop, record, shop.Operator);

        Assert.Equal("role", byInspector.Refusals[0].Code);
        Assert.Equal("role", byOperator.Refusals[0].Code);
        Assert.Equal(1, await shop.Site.EntriesAsync(record.Id));
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
