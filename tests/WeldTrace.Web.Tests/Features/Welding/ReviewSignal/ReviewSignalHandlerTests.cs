using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Welding;
using WeldTrace.Persistence.Loading;
using WeldTrace.Persistence.RunFigures;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Welding.ReviewSignal;

namespace WeldTrace.Web.Tests.Features.Welding.ReviewSignal;

public sealed class ReviewSignalHandlerTests(PostgresServerFixture server)
{
    private static readonly RunFigureFilter All = new(null, null, null);

    [Fact]
    public async Task HandleAsync_ARunThatStandsOut_IsReviewedOnceAndBelongsToItsVessel()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var run = await SampleFigures.AmongOthersAsync(shop, meanNewtons: 12_000);
        var form = Form();

        Accept.All(await ReviewAsync(shop, run, form));
        Accept.All(await ReviewAsync(shop, run, form));

        var view = await Reader(shop)
            .FindAsync(run.Id, WeldParameter.AxialForce, All, CancellationToken.None);
        var review = Assert.Single(view!.Reviews);
        Assert.Equal((21, 12m, "kN"), (review.Seen.Runs, review.Seen.Mean, review.Seen.Unit));
        Assert.Contains(RunSignal.ValueBeyondLimits, review.Seen.Signals);
        Assert.True(SignalReview.Cover(view.Reviews, view.Seen.Signals));
        var history = await shop.Database.ReadAsync(db =>
            db.FindVesselHistoryAsync(run.VesselSerial, CancellationToken.None)
        );
        Assert.Contains(history!.Records, r => r.Id == review.Id);
        var entry = await shop.Database.ReadAsync(db =>
            db.LedgerEntries.SingleAsync(e => e.RecordId == review.Id)
        );
        Assert.Equal([run.VesselId], entry.Vessels);
    }

    [Fact]
    public async Task HandleAsync_ARunLikeTheOthers_IsRefused()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var run = await SampleFigures.AmongOthersAsync(shop, meanNewtons: 8_000);

        var outcome = await ReviewAsync(shop, run, Form());

        Assert.Equal("signal", Assert.Single(outcome.Refusals).Code);
        Assert.Equal(0, await shop.Database.ReadAsync(db => db.SignalReviews.CountAsync()));
    }

    [Theory]
    [InlineData(null)]
    [InlineData("17")]
    [InlineData("maybe")]
    public async Task HandleAsync_WithoutConclusionAndText_NamesBothFields(string? conclusion)
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var run = await SampleFigures.AmongOthersAsync(shop, meanNewtons: 12_000);
        var form = Form();
        (form.Conclusion, form.Text) = (conclusion, " ");

        var outcome = await ReviewAsync(shop, run, form);

        Assert.Equal(
            [nameof(form.Conclusion), nameof(form.Text)],
            outcome.Refusals.Select(r => r.Field)
        );
    }

    [Fact]
    public async Task HandleAsync_WithAStrangeFinding_NamesTheField()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var run = await SampleFigures.AmongOthersAsync(shop, meanNewtons: 12_000);
        var form = Form();
        form.FindingId = Guid.CreateVersion7();

        var outcome = await ReviewAsync(shop, run, form);

        Assert.Equal(nameof(form.FindingId), Assert.Single(outcome.Refusals).Field);
    }

    [Fact]
    public async Task HandleAsync_RunsOfAnotherMachineOnly_KnowsNoSuchRun()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var run = await SampleFigures.AmongOthersAsync(shop, meanNewtons: 12_000);

        var outcome = await ReviewAsync(
            shop,
            run,
            Form(),
            All with
            {
                MachineId = Guid.CreateVersion7(),
            }
        );

        Assert.Equal("run", Assert.Single(outcome.Refusals).Code);
    }

    private static ReviewSignalForm Form() =>
        new()
        {
            Id = Guid.CreateVersion7(SampleTime.Start),
            Conclusion = nameof(SignalConclusion.CauseFound),
            Text = "The holder had been changed.",
        };

    private static ReviewSignalReader Reader(WeldShop shop) => new(shop.Database);

    private static Task<Outcome> ReviewAsync(
        WeldShop shop,
        WeldRun run,
        ReviewSignalForm form,
        RunFigureFilter? filter = null
    ) =>
        new ReviewSignalHandler(shop.Database, Reader(shop), shop.Clock).HandleAsync(
            run.Id,
            WeldParameter.AxialForce,
            filter ?? All,
            form,
            SamplePeople.Engineer,
            CancellationToken.None
        );
}
