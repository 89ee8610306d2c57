using Microsoft.AspNetCore.Http;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sectioning;
using WeldTrace.Engineering.Conformity;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Testing.MeasureSection;
using WeldTrace.Web.Features.Testing.TakeInSection;
using WeldTrace.Web.Tests.Pictures;

namespace WeldTrace.Web.Tests.Features.Testing;

public sealed class TakeInSectionHandlerTests(PostgresServerFixture server)
{
    private const string Photographed = "image/png";

    private static readonly byte[] Png = SamplePictures.Encoded(1200, 800);

    [Theory]
    [InlineData(100, Verdict.Pass)]
    [InlineData(290, Verdict.Undecided)]
    [InlineData(500, Verdict.Fail)]
    public async Task Section_TakenInMeasuredAndConcluded_IsJudged_AndKeepsItsPhotographOnce(
        int micrometres,
        Verdict expected
    )
    {
        await using var vessel = await AtSectionAsync();
        var form = Form();

        Accept.All(await TakeInAsync(vessel, form));
        Accept.All(await TakeInAsync(vessel, form));
        var measuring = new MeasureSectionHandler(vessel.Site.Database, vessel.Site.Clock);
        var none = CancellationToken.None;
        Accept.All(await measuring.SetScaleAsync(form.Id, Scale(), vessel.Inspector, none));
        Accept.All(
            await measuring.MeasureAsync(form.Id, Hook(micrometres), vessel.Inspector, none)
        );
        Accept.All(
            await measuring.ConcludeAsync(
                form.Id,
                new() { Seen = "A hook." },
                vessel.Inspector,
                none
            )
        );

        var section = await vessel.Site.Database.ReadAsync(db => db.Sections.SingleAsync());
        Assert.Equal((form.Id, expected), (section.Id, section.Verdict));
        var kept = await vessel.Site.Database.ReadAsync(db =>
            db.Attachments.SingleAsync(a => a.MediaType == Photographed)
        );
        Assert.Equal(Png, kept.Bytes);
        Assert.Equal(4, await vessel.Site.EntriesAsync(section.Id));
        Assert.Empty(await vessel.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Measurement_CorrectedAndStruck_KeepsBothInTheLedger()
    {
        await using var vessel = await AtSectionAsync();
        var (form, none) = (Form(), CancellationToken.None);
        Accept.All(await TakeInAsync(vessel, form));
        var measuring = new MeasureSectionHandler(vessel.Site.Database, vessel.Site.Clock);
        Accept.All(await measuring.SetScaleAsync(form.Id, Scale(), vessel.Inspector, none));
        Accept.All(await measuring.MeasureAsync(form.Id, Hook(500), vessel.Inspector, none));

        var corrected = Hook(100);
        (corrected.Replaces, corrected.Reason) = ("1", "the other edge");
        Accept.All(await measuring.MeasureAsync(form.Id, corrected, vessel.Inspector, none));
        Accept.All(
            await measuring.StrikeAsync(
                form.Id,
                new() { Number = "1", Reason = "no hook" },
                vessel.Inspector,
                none
            )
        );

        var section = await vessel.Site.Database.ReadAsync(db => db.Sections.SingleAsync());
        Assert.Empty(section.Picture!.Marks);
        Assert.Equal(
            ["0.500", "0.100"],
            section.Picture.Corrections.Select(c => c.Mark!.Result.Size!.Digits)
        );
        Assert.Empty(await vessel.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Measuring_ByARoleThatMayNot_OfNoSection_OrOutsideThePicture_IsRefused()
    {
        await using var vessel = await AtSectionAsync();
        var (form, none) = (Form(), CancellationToken.None);
        Accept.All(await TakeInAsync(vessel, form));
        var measuring = new MeasureSectionHandler(vessel.Site.Database, vessel.Site.Clock);

        var byQuality = await measuring.SetScaleAsync(form.Id, Scale(), vessel.Quality, none);
        var nowhere = await measuring.SetScaleAsync(
            Guid.CreateVersion7(),
            Scale(),
            vessel.Inspector,
            none
        );
        Accept.All(await measuring.SetScaleAsync(form.Id, Scale(), vessel.Inspector, none));
        var outside = await measuring.MeasureAsync(form.Id, Hook(900), vessel.Inspector, none);
        var words = Hook(100);
        words.Points = "left,right";
        var unreadable = await measuring.MeasureAsync(form.Id, words, vessel.Inspector, none);

        Assert.Equal("role:", WorkingSite.Text(byQuality.Refusals));
        Assert.Equal("missing:", WorkingSite.Text(nowhere.Refusals));
        Assert.Equal("outside:Points", WorkingSite.Text(outside.Refusals));
        Assert.Equal("points:Points", WorkingSite.Text(unreadable.Refusals));
    }

    [Fact]
    public async Task Section_ByARoleThatMayNot_OutOfTurn_OrOfAnUnknownStep_IsRefused()
    {
        await using var vessel = await AtSectionAsync(40);

        var byEngineer = await TakeInAsync(vessel, Form(), vessel.Engineer);
        var nowhere = await TakeInAsync(vessel, Form(), sequence: 55);

        Assert.Equal("role: F1:", WorkingSite.Text(byEngineer.Refusals));
        Assert.Equal("missing:", WorkingSite.Text(nowhere.Refusals));
        await NothingAsync(vessel);
    }

    [Fact]
    public async Task Section_WithUnreadableFields_TellsAll()
    {
        await using var vessel = await AtSectionAsync();

        var outcome = await TakeInAsync(
            vessel,
            Form(f => (f.Angle, f.Scale, f.Limits, f.Photograph) = ("left", "huge", "", null))
        );

        Assert.Equal(
            ["Angle", "Limits", "Photograph", "Scale"],
            outcome.Refusals.Select(r => r.Field!).Order(StringComparer.Ordinal)
        );
        await NothingAsync(vessel);
    }

    [Fact]
    public async Task Section_WithAFileThatIsNoPhotograph_OrIsCutOff_IsRefused()
    {
        await using var vessel = await AtSectionAsync();

        var page = await TakeInAsync(
            vessel,
            Form(f => f.Photograph = WorkingSite.Paper("<html>", "macro.png"))
        );
        var half = await TakeInAsync(
            vessel,
            Form(f => f.Photograph = Brought(Png[..(Png.Length / 2)]))
        );

        Assert.Equal("photograph:Photograph", WorkingSite.Text(page.Refusals));
        Assert.Equal("photograph:Photograph", WorkingSite.Text(half.Refusals));
        Assert.Contains(
            "ends in mid-file, at row",
            half.Refusals[0].Sentence,
            StringComparison.Ordinal
        );
        await NothingAsync(vessel);
    }

    private static TakeInSectionForm Form(Action<TakeInSectionForm>? edit = null)
    {
        var form = new TakeInSectionForm
        {
            Id = Guid.CreateVersion7(SampleTime.Start),
            Specimen = "M1",
            PassNumber = "1",
            Angle = "90",
            Plane = "across the weld",
            Etchant = "Keller, 15 s",
            Magnification = "10×",
            Method = "ISO 17639",
            MethodEdition = "2003",

            Instrument = "CAL-7",
            Photograph = Brought(Png),
        };
        edit?.Invoke(form);
        return form;
    }

    private static ScaleForm Scale() =>
        new()
        {
            PixelLength = "1",
            PixelUncertainty = "0",
            Pointing = "7",
            Face = "100,100 1100,100",
        };

    private static MarkForm Hook(int micrometres) =>
        new()
        {
            Shape = nameof(PictureShape.Line),
            Subject = nameof(Imperfection.Hook),
            Points = FormattableString.Invariant($"200,200 200,{200 + micrometres}"),
            DesignLimit = "0.30",
            DesignDocument = "DS-10 rev B",
        };

    private static FormFile Brought(byte[] bytes) =>
        new(new MemoryStream(bytes), 0, bytes.Length, "In.Photograph", "m.png");

    private async Task<RoutedVessel> AtSectionAsync(int sequence = 50)
    {
        var vessel = await RoutedVessel.AtAsync(server, sequence);
        await vessel.Site.Database.AddAsync(SampleTests.NewLimits());
        return vessel;
    }

    private static async Task<Outcome> TakeInAsync(
        RoutedVessel vessel,
        TakeInSectionForm form,
        Actor? actor = null,
        int sequence = 50
    )
    {
        form.Limits ??= (
            await vessel.Site.Database.ReadAsync(db =>
                db.LimitTables.SingleAsync(t => t.Covers == LimitKind.Imperfections)
            )
        ).Id.ToString();
        using var pictures = SamplePictures.Store(vessel.Site.Database);
        return await new TakeInSectionHandler(
            vessel.Site.Database,
            pictures,
            vessel.Site.Clock
        ).HandleAsync(
            vessel.Serial,
            sequence,
            form,
            actor ?? vessel.Inspector,
            CancellationToken.None
        );
    }

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
