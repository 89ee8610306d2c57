using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Vessels;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Paths;
using WeldTrace.Persistence;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Welding;

namespace WeldTrace.Web.Tests.Features.Welding;

public sealed class StartRunHandlerTests(PostgresServerFixture server)
{
    [Fact]
    public async Task HandleAsync_RulesHold_StartsRunWithItsLedgerEntries()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var form = shop.StartForm();

        var outcome = await shop.StartAsync(form);

        Assert.Empty(outcome.Refusals);
        var run = await shop.RunAsync(form.Id);
        Assert.Equal(WeldRunState.Running, run.State);
        Assert.Equal(SamplePeople.Operator.PrintedName, run.OperatorName);
        Assert.Equal(9, run.Gate.Count);
        Assert.Equal(405.79, run.PlannedPath.Millimetres, 2);
        Assert.Equal(StepState.InProgress, (await shop.VesselNowAsync()).Step(10)!.State);
        var acts = await shop.Database.ReadAsync(db =>
            db.LedgerEntries.Where(e => e.RecordId == form.Id).Select(e => e.Entry).ToListAsync()
        );
        Assert.Contains("weld run started", Assert.Single(acts), StringComparison.Ordinal);
    }

    [Fact]
    public async Task HandleAsync_SecondPress_StartsOneRun()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var form = shop.StartForm();

        var first = await shop.StartAsync(form);
        var second = await shop.StartAsync(form);

        Assert.True(first.IsAccepted);
        Assert.True(second.IsAccepted);
        Assert.Equal(1, await shop.Database.ReadAsync(db => db.WeldRuns.CountAsync()));
    }

    [Fact]
    public async Task HandleAsync_TwoPressesAtOnce_StartOneRun()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var form = shop.StartForm();

        var outcomes = await Task.WhenAll(shop.StartAsync(form), shop.StartAsync(form));

        Assert.All(outcomes, o => Assert.Empty(o.Refusals));
        Assert.Equal(1, await shop.Database.ReadAsync(db => db.WeldRuns.CountAsync()));
    }

    [Fact]
    public async Task HandleAsync_TwoPeopleAtOnce_OneRunAndOneRefusal()
    {
        await using var shop = await WeldShop.OpenAsync(server);

        var outcomes = await Task.WhenAll(
            shop.StartAsync(shop.StartForm()),
            shop.StartAsync(shop.StartForm(), SamplePeople.SecondOperator)
        );

        var refused = Assert.Single(outcomes, o => !o.IsAccepted);
        Assert.Contains(refused.Refusals, r => r.Code is Saving.LostRace or "F1");
        Assert.Equal(1, await shop.Database.ReadAsync(db => db.WeldRuns.CountAsync()));
    }

    [Fact]
    public async Task HandleAsync_OtherRunUnsigned_Refused()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        await shop.EndedAsync();

        var same = await shop.StartAsync(shop.StartForm());
        var next = await shop.StartAsync(shop.StartForm(RotationSense.Clockwise), step: 20);

        Assert.Contains(same.Refusals, r => r.Code == "F1" && Says(r.Sentence, "isn't signed yet"));
        Assert.Contains(next.Refusals, r => r.Code == "F1" && Says(r.Sentence, "isn't signed yet"));
        Assert.Equal(1, await shop.Database.ReadAsync(db => db.WeldRuns.CountAsync()));
    }

    [Fact]
    public async Task HandleAsync_ToolLifeTooShort_Refused()
    {
        await using var shop = await WeldShop.OpenAsync(server, toolLifeMetres: 0.4);

        var outcome = await shop.StartAsync(shop.StartForm());

        var refusal = Assert.Single(outcome.Refusals);
        Assert.Equal("F6", refusal.Code);
        Assert.Contains(
            "0.400 m left, this pass needs 0.406 m",
            refusal.Sentence,
            StringComparison.Ordinal
        );
        Assert.Equal(StepState.Ready, (await shop.VesselNowAsync()).Step(10)!.State);
    }

    [Fact]
    public async Task HandleAsync_NoOperator_Refused()
    {
        await using var shop = await WeldShop.OpenAsync(server);

        var outcome = await shop.StartAsync(shop.StartForm(), SamplePeople.Inspector);

        Assert.Equal(["role", "F4"], outcome.Refusals.Select(r => r.Code));
    }

    [Fact]
    public async Task HandleAsync_OtherTravelThanDrawn_Refused()
    {
        await using var shop = await WeldShop.OpenAsync(server);

        var outcome = await shop.StartAsync(shop.StartForm(RotationSense.Clockwise));

        var refusal = Assert.Single(outcome.Refusals);
        Assert.Equal(("F9", nameof(StartRunForm.Travel)), (refusal.Code, refusal.Field));
    }

    [Fact]
    public async Task HandleAsync_NothingChosen_NamesEachField()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var form = shop.StartForm(travel: null);
        form.Machine = "no such machine";

        var outcome = await shop.StartAsync(form);

        Assert.Equal(
            [nameof(StartRunForm.Machine), nameof(StartRunForm.Travel)],
            outcome.Refusals.Select(r => r.Field)
        );
    }

    [Theory]
    [InlineData(30)]
    [InlineData(11)]
    public async Task HandleAsync_NoWeldStep_Refused(int step)
    {
        await using var shop = await WeldShop.OpenAsync(server);

        var outcome = await shop.StartAsync(shop.StartForm(), step: step);

        Assert.Contains(outcome.Refusals, r => r.Code == "step");
    }

    private static bool Says(string sentence, string words) =>
        sentence.Contains(words, StringComparison.Ordinal);
}
