using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Records;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Equipment;
using WeldTrace.Web.Features.Equipment.NewInstrument;
using WeldTrace.Web.Features.Equipment.ShowInstrument;

namespace WeldTrace.Web.Tests.Features.Equipment;

public sealed class InstrumentActsTests(PostgresServerFixture server)
{
    [Fact]
    public async Task Enter_Whole_IsRecorded()
    {
        await using var site = await WorkingSite.OpenAsync(server);

        var entered = await EnterAsync(site, SamplePeople.Engineer);

        Assert.Empty(entered.Refusals);
        var instrument = await site.ReadAsync<Instrument>(entered.Value!.Id);
        Assert.Equal(("CAL-9", "150 mm"), (instrument.Mark, instrument.Text.Upper.ToString()));
        Assert.Null(instrument.DueOn);
        Assert.Equal(1, await site.EntriesAsync(instrument.Id));
        Assert.Empty(await site.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Enter_ByARoleThatMayNot_IsRefused()
    {
        await using var site = await WorkingSite.OpenAsync(server);

        var entered = await EnterAsync(site, SamplePeople.Operator);

        Assert.Equal("role:", WorkingSite.Text(entered.Refusals));
        Assert.Equal(0, await site.Database.ReadAsync(db => db.Instruments.CountAsync()));
    }

    [Fact]
    public async Task Enter_WithUnreadableValues_TellsAll()
    {
        await using var site = await WorkingSite.OpenAsync(server);

        var entered = await EnterAsync(
            site,
            SamplePeople.Engineer,
            f =>
                (f.Kind, f.Unit, f.Upper, f.Resolution, f.IntervalMonths) = (
                    "clock",
                    " ",
                    "wide",
                    null,
                    "1.5"
                )
        );

        Assert.Equal(
            "choice:Kind number:Upper number:Resolution number:IntervalMonths unit:Unit",
            WorkingSite.Text(entered.Refusals)
        );
    }

    [Fact]
    public async Task Enter_WithARangeThatCannotBe_TellsAll()
    {
        await using var site = await WorkingSite.OpenAsync(server);

        var entered = await EnterAsync(
            site,
            SamplePeople.Engineer,
            f =>
                (f.Mark, f.Lower, f.Resolution, f.LargestError, f.IntervalMonths) = (
                    "",
                    "200",
                    "0",
                    "-1",
                    "0"
                )
        );

        Assert.Equal(
            "missing:Mark range:Upper resolution:Resolution error:LargestError interval:IntervalMonths",
            WorkingSite.Text(entered.Refusals)
        );
    }

    [Fact]
    public async Task Enter_AMarkThatIsTaken_IsToldAtTheMark()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        Accept.Value(await EnterAsync(site, SamplePeople.Engineer));

        var again = await EnterAsync(site, SamplePeople.Engineer);

        Assert.Equal("exists:Mark", WorkingSite.Text(again.Refusals));
    }

    [Theory]
    [InlineData("0.02", true)]
    [InlineData("-0.03", false)]
    public async Task Calibrate_KeepsThePaper_AndJudgesTheError(string error, bool isWithin)
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var id = Accept.Value(await EnterAsync(site, SamplePeople.Engineer)).Id;

        Accept.All(await CalibrateAsync(site, id, f => f.AsFoundError = error));

        var calibration = (await site.ReadAsync<Instrument>(id)).Latest!;
        Assert.Equal(
            (isWithin, site.Today.AddMonths(12)),
            (calibration.IsWithinLimit, calibration.DueOn)
        );
        Assert.Equal(
            1,
            await site.Database.ReadAsync(db =>
                db.Attachments.CountAsync(a => a.Sha256 == calibration.FileSha256)
            )
        );
        Assert.Equal(2, await site.EntriesAsync(id));
        Assert.Empty(await site.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Calibrate_ByARoleThatMayNot_OrNothing_IsRefused()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var id = Accept.Value(await EnterAsync(site, SamplePeople.Engineer)).Id;

        var byEngineer = await CalibrateAsync(site, id, actor: SamplePeople.Engineer);
        var ofNothing = await CalibrateAsync(site, Guid.Empty);

        Assert.Equal("role:", WorkingSite.Text(byEngineer.Refusals));
        Assert.Equal("instrument:", WorkingSite.Text(ofNothing.Refusals));
        Assert.Equal(0, await site.PapersAsync());
    }

    [Fact]
    public async Task Calibrate_WithFaults_TellsAll()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var id = Accept.Value(await EnterAsync(site, SamplePeople.Engineer)).Id;

        var unread = await CalibrateAsync(
            site,
            id,
            f =>
                (f.On, f.AsFoundError, f.File) = (
                    null,
                    "small",
                    WorkingSite.Paper("<html>", "c.pdf")
                )
        );
        var wrong = await CalibrateAsync(
            site,
            id,
            f => (f.On, f.Laboratory, f.CertificateNumber) = (site.Today.AddDays(1), "", " ")
        );

        Assert.Equal("number:AsFoundError day:On file:File", WorkingSite.Text(unread.Refusals));
        Assert.Equal(
            "future:On missing:Laboratory missing:CertificateNumber",
            WorkingSite.Text(wrong.Refusals)
        );
        Assert.Null((await site.ReadAsync<Instrument>(id)).Latest);
    }

    [Fact]
    public async Task Calibrate_TheSameDayTwice_IsRefused()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var id = Accept.Value(await EnterAsync(site, SamplePeople.Engineer)).Id;
        Accept.All(await CalibrateAsync(site, id));

        var again = await CalibrateAsync(site, id);

        Assert.Equal("order:On", WorkingSite.Text(again.Refusals));
    }

    [Fact]
    public async Task Withdraw_IsForGood()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var id = Accept.Value(await EnterAsync(site, SamplePeople.Engineer)).Id;
        var byEngineer = await WithdrawAsync(site, id, SamplePeople.Engineer);
        var wordless = await WithdrawAsync(site, id, SamplePeople.Inspector, " ");

        Accept.All(await WithdrawAsync(site, id, SamplePeople.Inspector));

        var again = await WithdrawAsync(site, id, SamplePeople.Inspector);
        var late = await CalibrateAsync(site, id);
        Assert.Equal("role:", WorkingSite.Text(byEngineer.Refusals));
        Assert.Equal("missing:Reason", WorkingSite.Text(wordless.Refusals));
        Assert.Equal("state:", WorkingSite.Text(again.Refusals));
        Assert.Equal("state:", WorkingSite.Text(late.Refusals));
        Assert.Equal("Dropped", (await site.ReadAsync<Instrument>(id)).WithdrawnBecause);
        Assert.Equal(2, await site.EntriesAsync(id));
    }

    private static Task<Outcome<Instrument>> EnterAsync(
        WorkingSite site,
        Actor actor,
        Action<NewInstrumentForm>? edit = null
    )
    {
        var form = new NewInstrumentForm
        {
            Mark = "CAL-9",
            Kind = nameof(InstrumentKind.Length),
            Description = "caliper, serial 7741",
            Unit = "mm",
            Upper = "150",
            Resolution = "0.01",
            LargestError = "0.02",
        };
        edit?.Invoke(form);
        return new NewInstrumentHandler(site.Database, site.Clock).HandleAsync(
            form,
            actor,
            CancellationToken.None
        );
    }

    private static Task<Outcome> CalibrateAsync(
        WorkingSite site,
        Guid id,
        Action<CalibrateForm>? edit = null,
        Actor? actor = null
    )
    {
        var form = new CalibrateForm
        {
            On = site.Today,
            Laboratory = "Bay metrology",
            CertificateNumber = "BM-1",
            AsFoundError = "0.01",
            File = WorkingSite.Paper(),
        };
        edit?.Invoke(form);
        return Handler(site)
            .CalibrateAsync(id, form, actor ?? SamplePeople.Inspector, CancellationToken.None);
    }

    private static Task<Outcome> WithdrawAsync(
        WorkingSite site,
        Guid id,
        Actor actor,
        string reason = "Dropped"
    ) => Handler(site).WithdrawAsync(id, new() { Reason = reason }, actor, CancellationToken.None);

    private static InstrumentHandler Handler(WorkingSite site) =>
        new(site.Database, site.Day, site.Clock);
}
