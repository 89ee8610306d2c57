using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.Vessels;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Signals;
using WeldTrace.Persistence.ProcessLogStore;
using WeldTrace.ProcessLogs;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Welding.ReadLog;
using WeldTrace.Web.LogJudging;

namespace WeldTrace.Web.Tests.Features.Welding.ReadLog;

public sealed class ReadLogHandlerTests(PostgresServerFixture server)
{
    [Fact]
    public async Task HandleAsync_GoodLog_JudgesChargesAndRemembersTheMapping()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await shop.EndedAsync();

        var result = await shop.BringAsync(id, SampleLogs.Good());

        Assert.Empty(result.Outcome.Refusals);
        Assert.Empty(result.Problems);
        var run = await shop.RunAsync(id);
        Assert.True(run.Log!.ReachedEnd);
        Assert.Empty(run.Log.Excursions);
        Assert.Equal(
            ["plunge", "dwell", "ramp", "traverse", "overlap", "exit"],
            run.Log.Phases.Select(p => p.Phase)
        );
        Assert.Empty(run.Log.NotJudged);
        var dwell = run.Log.Parameters.Single(p => p.Parameter == WeldParameter.DwellTime);
        Assert.Equal(3, dwell.MeanSi, 0.15);
        Assert.Equal(405.8, run.Travelled!.Value.Millimetres, 0);
        var use = Assert.Single((await shop.ToolNowAsync()).Uses);
        Assert.Equal(ChargeBasis.ProcessLog, use.Basis);
        Assert.Equal(run.Travelled.Value.Metres, use.Length.Metres, 9);
        var machine = await shop.Database.ReadAsync(db => db.Machines.SingleAsync());
        Assert.Equal(12, machine.LogColumns.Count);
        Assert.Contains(
            machine.LogColumns,
            c => c is { Channel: "PlungeDepth", Unit: "mm", Factor: -1 }
        );
        Assert.Empty(shop.StagedFiles);
    }

    [Fact]
    public async Task HandleAsync_GoodLog_KeepsSamplesThatGiveTheFileBack()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await shop.EndedAsync();
        var file = SampleLogs.Good();

        await shop.BringAsync(id, file);

        var log = await shop.Database.ReadAsync(db =>
            db.FindProcessLogAsync(id, CancellationToken.None)
        );
        using var written = new MemoryStream();
        var sha256 = await ProcessLogExport.WriteCsvAsync(log!, written, CancellationToken.None);
        Assert.Equal(file, written.ToArray());
        Assert.Equal((await shop.RunAsync(id)).Log!.CsvSha256, sha256);
        Assert.Equal(
            0,
            await shop.Database.ReadAsync(db =>
                db.Attachments.CountAsync(a => a.MediaType == "text/csv")
            )
        );
    }

    [Fact]
    public async Task HandleAsync_ColumnNotKept_KeepsTheOriginalBeside()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await shop.EndedAsync();
        var file = SampleLogs.Good();

        var result = await shop.BringAsync(
            id,
            file,
            edit: form => form.Columns[11].Channel = nameof(LogChannel.Ignored)
        );

        Assert.True(result.IsAccepted);
        var original = await shop.Database.ReadAsync(db =>
            db.Attachments.SingleAsync(a => a.MediaType == "text/csv")
        );
        Assert.Equal(file, original.Bytes);
        Assert.Equal((await shop.RunAsync(id)).Log!.OriginalSha256, original.Sha256);
    }

    [Fact]
    public async Task HandleAsync_Excursion_OpensFindingAtItsPlaceAndHoldsTheVessel()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await shop.EndedAsync();

        var result = await shop.BringAsync(id, SampleLogs.WithExcursion());

        Assert.True(result.IsAccepted);
        var finding = await shop.Database.ReadAsync(db => db.Findings.SingleAsync());
        Assert.Equal((FindingOrigin.Excursion, (Guid?)id), (finding.Origin, finding.EvidenceId));
        Assert.InRange(finding.Place!.Start!.Value.Degrees, 89, 91);
        Assert.InRange(finding.Place.End!.Value.Degrees, 98, 100.5);
        Assert.Contains(
            "Axial force below its window",
            finding.Description,
            StringComparison.Ordinal
        );
        var vessel = await shop.VesselNowAsync();
        Assert.Equal(
            (VesselState.OnHold, StepState.InProgress),
            (vessel.State, vessel.Step(10)!.State)
        );
    }

    [Fact]
    public async Task HandleAsync_FilterOfAColumn_IsRememberedAndToldOnTheRun()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await shop.EndedAsync();
        void Choose(ReadLogForm form, string samples)
        {
            var force = form.Columns.Single(c => c.Channel == nameof(LogChannel.AxialForce));
            (force.Filter, force.FilterSamples) = (nameof(SampleFilterKind.MovingMedian), samples);
        }

        var refused = await shop.BringAsync(id, SampleLogs.Good(), edit: form => Choose(form, "4"));
        var useless = await shop.BringAsync(
            id,
            SampleLogs.Good(),
            edit: form =>
                (form.Columns[0].Filter, form.Columns[0].FilterSamples) = (
                    nameof(SampleFilterKind.MovingMean),
                    "5"
                )
        );
        var taken = await shop.BringAsync(id, SampleLogs.Good(), edit: form => Choose(form, "5"));

        Assert.Contains(
            "an odd number of samples from 3 to 101",
            Assert.Single(refused.Problems).Remedy,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "is set to time, which is never judged",
            Assert.Single(useless.Problems).Sentence,
            StringComparison.Ordinal
        );
        Assert.True(taken.IsAccepted);
        var judged = Assert.Single((await shop.RunAsync(id)).Log!.Filters!);
        Assert.Equal(
            ("axial force", "moving median of 5 samples"),
            (judged.Parameter, judged.Filter.Text)
        );
        var machine = await shop.Database.ReadAsync(db => db.Machines.SingleAsync());
        Assert.Equal(
            new SampleFilter(SampleFilterKind.MovingMedian, 5),
            Assert.Single(machine.LogColumns, c => c.Filter is not null).Filter
        );
        Assert.Equal(5, machine.Remembered()!.Filters[LogChannel.AxialForce].Samples);
    }

    [Fact]
    public async Task HandleAsync_LogStopsEarly_InterruptsTheRunAndChargesWhatItTravelled()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await shop.EndedAsync();

        var result = await shop.BringAsync(id, SampleLogs.Stopped());

        Assert.True(result.IsAccepted);
        var run = await shop.RunAsync(id);
        Assert.Equal(WeldRunState.Interrupted, run.State);
        Assert.Equal(62 * Math.PI, run.Travelled!.Value.Millimetres, 0);
        Assert.Equal(
            run.Travelled.Value.Metres,
            Assert.Single((await shop.ToolNowAsync()).Uses).Length.Metres,
            9
        );
        Assert.Equal(StepState.Failed, (await shop.VesselNowAsync()).Step(10)!.State);
        var finding = await shop.Database.ReadAsync(db => db.Findings.SingleAsync());
        Assert.Equal(FindingOrigin.InterruptedRun, finding.Origin);
    }

    [Fact]
    public async Task HandleAsync_SignOfForceWrong_RefusedWithTheReason()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await shop.EndedAsync();

        var result = await shop.BringAsync(
            id,
            SampleLogs.Good(),
            edit: form => form.Columns[3].Factor = "-1"
        );

        Assert.Equal("no-travel", Assert.Single(result.Outcome.Refusals).Code);
        Assert.Equal(LogProblemCode.NoTraverse, Assert.Single(result.Problems).Code);
        await AssertNothingKeptAsync(shop, id);
    }

    [Fact]
    public async Task HandleAsync_TakenTwiceAtOnce_OneLog()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await shop.EndedAsync();
        var upload = await shop.UploadAsync(id, SampleLogs.Good());

        var results = await Task.WhenAll(shop.TakeAsync(id, upload), shop.TakeAsync(id, upload));

        Assert.Single(results, r => r.IsAccepted);
        Assert.Equal(1, await shop.Database.ReadAsync(db => db.ProcessLogs.CountAsync()));
        Assert.Equal(12, await shop.Database.ReadAsync(db => db.ProcessLogChunks.CountAsync()));
    }

    [Fact]
    public async Task HandleAsync_SecondLog_Refused()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await shop.EndedAsync();
        var upload = await shop.UploadAsync(id, SampleLogs.Good());
        Assert.True((await shop.TakeAsync(id, upload)).IsAccepted);

        var result = await shop.TakeAsync(id, upload);

        Assert.Equal("log", Assert.Single(result.Outcome.Refusals).Code);
    }

    [Fact]
    public async Task HandleAsync_FileGone_Refused()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await shop.EndedAsync();

        var result = await shop.TakeAsync(id, shop.Vessel.Id);

        Assert.Equal("gone", Assert.Single(result.Outcome.Refusals).Code);
    }

    [Fact]
    public async Task HandleAsync_Inspector_Refused()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await shop.EndedAsync();
        var upload = await shop.UploadAsync(id, SampleLogs.Good());

        var result = await shop.TakeAsync(id, upload, actor: SamplePeople.Inspector);

        Assert.Equal("role", Assert.Single(result.Outcome.Refusals).Code);
        await AssertNothingKeptAsync(shop, id);
    }

    private static async Task AssertNothingKeptAsync(WeldShop shop, Guid id)
    {
        Assert.Null((await shop.RunAsync(id)).Log);
        Assert.Equal(0, await shop.Database.ReadAsync(db => db.ProcessLogs.CountAsync()));
        Assert.Equal(
            ChargeBasis.PlannedPath,
            Assert.Single((await shop.ToolNowAsync()).Uses).Basis
        );
    }
}
