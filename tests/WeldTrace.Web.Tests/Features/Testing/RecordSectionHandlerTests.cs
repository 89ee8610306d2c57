using Microsoft.AspNetCore.Http;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sectioning;
using WeldTrace.Engineering.Conformity;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Testing.RecordSection;

namespace WeldTrace.Web.Tests.Features.Testing;

public sealed class RecordSectionHandlerTests(PostgresServerFixture server)
{
    private const string Photographed = "image/png";

    // The smallest PNG there is: one point.
    private static readonly byte[] Png = Convert.FromBase64String(
        "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg=="
    );

    [Theory]
    [InlineData("0.10", Verdict.Pass)]
    [InlineData("0.29", Verdict.Undecided)]
    [InlineData("0.50", Verdict.Fail)]
    public async Task Section_Whole_IsJudged_AndKeepsItsPhotographOnce(
        string size,
        Verdict expected
    )
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 50);
        var form = Form(f => f.Size = size);

        Accept.All(await RecordAsync(vessel, form));
        Accept.All(await RecordAsync(vessel, form));

        var section = await vessel.Site.Database.ReadAsync(db => db.Sections.SingleAsync());
        Assert.Equal((form.Id, expected), (section.Id, section.Verdict));
        var kept = await vessel.Site.Database.ReadAsync(db =>
            db.Attachments.SingleAsync(a => a.MediaType == Photographed)
        );
        Assert.Equal(Png, kept.Bytes);
        Assert.Equal(1, await vessel.Site.EntriesAsync(section.Id));
        Assert.Empty(await vessel.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Section_ByARoleThatMayNot_OutOfTurn_OrOfAnUnknownStep_IsRefused()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 40);

        var byEngineer = await RecordAsync(vessel, Form(), vessel.Engineer);
        var nowhere = await RecordAsync(vessel, Form(), sequence: 55);

        Assert.Equal("role: F1:", WorkingSite.Text(byEngineer.Refusals));
        Assert.Equal("missing:", WorkingSite.Text(nowhere.Refusals));
        await NothingAsync(vessel);
    }

    [Fact]
    public async Task Section_WithUnreadableFields_TellsAll()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 50);

        var outcome = await RecordAsync(
            vessel,
            Form(f =>
                (f.Angle, f.Imperfection, f.Size, f.Side, f.Photograph) = (
                    "left",
                    "moon",
                    "",
                    "above",
                    null
                )
            )
        );

        Assert.Equal(
            ["Angle", "Imperfection", "Photograph", "Side"],
            outcome
                .Refusals.Select(r => r.Field!)
                .Where(f => f != "Size")
                .Order(StringComparer.Ordinal)
        );
        await NothingAsync(vessel);
    }

    [Fact]
    public async Task Section_WithAFileThatIsNoPhotograph_IsRefused()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 50);

        var outcome = await RecordAsync(
            vessel,
            Form(f => f.Photograph = WorkingSite.Paper("<html>", "macro.png"))
        );

        Assert.Equal("photograph:Photograph", WorkingSite.Text(outcome.Refusals));
        await NothingAsync(vessel);
    }

    private static RecordSectionForm Form(Action<RecordSectionForm>? edit = null)
    {
        var form = new RecordSectionForm
        {
            Id = Guid.CreateVersion7(SampleTime.Start),
            PassNumber = "1",
            Angle = "90",
            Etchant = "Keller, 15 s",
            Magnification = "10×",
            Instrument = "CAL-7",
            Imperfection = nameof(Imperfection.Cavity),
            Size = "0.10",
            SizeUncertainty = "0.02",
            Limit = "0.30",
            LimitSource = "DS-10 rev B",
            Photograph = new FormFile(
                new MemoryStream(Png),
                0,
                Png.Length,
                "In.Photograph",
                "m.png"
            ),
        };
        edit?.Invoke(form);
        return form;
    }

    private static Task<Outcome> RecordAsync(
        RoutedVessel vessel,
        RecordSectionForm form,
        Actor? actor = null,
        int sequence = 50
    ) =>
        new RecordSectionHandler(vessel.Site.Database, vessel.Site.Clock).HandleAsync(
            vessel.Serial,
            sequence,
            form,
            actor ?? vessel.Inspector,
            CancellationToken.None
        );

    private static async Task NothingAsync(RoutedVessel vessel)
    {
        Assert.Equal(0, await vessel.Site.Database.ReadAsync(db => db.Sections.CountAsync()));
        Assert.Equal(
            0,
            await vessel.Site.Database.ReadAsync(db =>
                db.Attachments.CountAsync(a => a.MediaType == Photographed)
            )
        );
    }
}
