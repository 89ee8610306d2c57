using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Qualification;
using WeldTrace.Engineering.Conformity;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Qualifications.Enter;

namespace WeldTrace.Web.Tests.Features.Qualifications;

public sealed class EnterResultHandlerTests(PostgresServerFixture server)
{
    private static CancellationToken Cancellation => QualificationShop.Cancellation;

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
        var view = await shop.Reader.FindAsync(record.Id, Cancellation);
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
}
