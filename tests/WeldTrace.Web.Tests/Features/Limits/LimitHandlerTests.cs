using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence.LedgerStore;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Limits.Enter;
using WeldTrace.Web.Features.Limits.List;
using WeldTrace.Web.Features.Limits.Show;

namespace WeldTrace.Web.Tests.Features.Limits;

public sealed class LimitHandlerTests(PostgresServerFixture server)
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Ship_EmptySite_EntersAllTablesOnce()
    {
        await using var desk = await WorkingSite.OpenAsync(server);
        var handler = new ShipLimitsHandler(desk.Database, desk.Clock);

        Accept.All(await handler.HandleAsync(SamplePeople.QualityManager, Cancellation));

        Assert.False(await handler.IsAnyMissingAsync(SamplePeople.QualityManager, Cancellation));
        Assert.Equal(
            SampleLimits.Shipped.Count,
            await desk.Database.ReadAsync(db => db.LimitTables.CountAsync(Cancellation))
        );
        var refused = await handler.HandleAsync(SamplePeople.Engineer, Cancellation);
        Assert.Equal("role", Assert.Single(refused.Refusals).Code);
    }

    [Fact]
    public async Task Revise_WithPassword_SupersedesAndSigns()
    {
        await using var desk = await WorkingSite.OpenAsync(server);
        var quality = await desk.EnterAsync("Quentin Hale", Role.QualityManager);
        var (id, form) = await ShippedAsync(desk);

        var next = await EnterAsync(desk, id, form, quality);

        Assert.True(next.IsAccepted);
        await desk.Database.ReadAsync(async db =>
        {
            var before = await db.LimitTables.SingleAsync(t => t.Id == id, Cancellation);
            Assert.Equal(next.Value.Id, before.SupersededById);
            Assert.Equal(1, await db.Signatures.CountAsync(s => s.SignedId == next.Value.Id));
            Assert.Empty((await db.CheckLedgerAsync(Cancellation)).Problems);
            return true;
        });
    }

    [Fact]
    public async Task Revise_WrongPassword_ChangesNothing()
    {
        await using var desk = await WorkingSite.OpenAsync(server);
        var quality = await desk.EnterAsync("Quentin Hale", Role.QualityManager);
        var (id, form) = await ShippedAsync(desk);
        form.Password = "wrong";

        var next = await EnterAsync(desk, id, form, quality);

        Assert.Equal("Password", Assert.Single(next.Refusals).Field);
        Assert.Equal(
            1,
            await desk.Database.ReadAsync(db => db.LimitTables.CountAsync(Cancellation))
        );
    }

    [Fact]
    public async Task Revise_CellThatIsNoNumber_NamesItsField()
    {
        await using var desk = await WorkingSite.OpenAsync(server);
        var quality = await desk.EnterAsync("Quentin Hale", Role.QualityManager);
        var (id, form) = await ShippedAsync(desk);
        form.Rows[1].Cells[3] = "one";

        var next = await EnterAsync(desk, id, form, quality);

        Assert.Equal("Rows[1].Cells[3]", Assert.Single(next.Refusals).Field);
    }

    [Fact]
    public async Task Enter_CodeTaken_NamesTheField()
    {
        await using var desk = await WorkingSite.OpenAsync(server);
        var quality = await desk.EnterAsync("Quentin Hale", Role.QualityManager);
        var (_, form) = await ShippedAsync(desk);

        var entered = await EnterAsync(desk, null, form, quality);

        Assert.Equal(nameof(form.Code), Assert.Single(entered.Refusals).Field);
    }

    [Fact]
    public async Task Check_ByQualityManager_IsSignedAndTextCannotChangeAfterwards()
    {
        await using var desk = await WorkingSite.OpenAsync(server);
        var quality = await desk.EnterAsync("Quentin Hale", Role.QualityManager);
        var (id, _) = await ShippedAsync(desk);

        var outcome = await new LimitTableHandler(desk.Database, desk.Desk).CheckAsync(
            id,
            new CheckLimitsForm { OwnCopy = "shelf 3", Password = WorkingSite.Password },
            quality,
            Cancellation
        );

        Accept.All(outcome);
        await using var db = desk.Database.CreateDbContext();
        var failure = await Assert.ThrowsAsync<Npgsql.PostgresException>(() =>
            db.Database.ExecuteSqlRawAsync("UPDATE limit_tables SET code = 'X'", Cancellation)
        );
        Assert.Contains("never changed", failure.MessageText, StringComparison.Ordinal);
    }

    private static async Task<(Guid Id, EnterLimitsForm Form)> ShippedAsync(WorkingSite desk)
    {
        var table = SampleLimits.Fresh().Single(t => t.Code == ShippedLimits.Tensile);
        await desk.Database.AddAsync(table);
        var form = EnterLimitsForm.Of(table);
        form.Reason = "amendment";
        form.Password = WorkingSite.Password;
        form.FillRows();
        return (table.Id, form);
    }

    private static Task<Outcome<LimitTable>> EnterAsync(
        WorkingSite desk,
        Guid? id,
        EnterLimitsForm form,
        Actor actor
    ) =>
        new EnterLimitsHandler(desk.Database, desk.Passwords, desk.Clock).HandleAsync(
            id,
            form,
            actor,
            Cancellation
        );
}
