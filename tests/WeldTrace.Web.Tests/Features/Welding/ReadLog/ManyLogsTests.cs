using Microsoft.EntityFrameworkCore;
using WeldTrace.TestSupport.Database;
using WeldTrace.Web.LogJudging;

namespace WeldTrace.Web.Tests.Features.Welding.ReadLog;

/// <summary>Logs that arrive at once are read one after another; none is lost, and a line that is full says so.</summary>
public sealed class ManyLogsTests(PostgresServerFixture server)
{
    private const int Runs = 20;

    [Fact]
    public async Task TwentyLogsAtOnce_AreAllKept()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        await shop.RememberAsync();
        var runs = await shop.EndedAsync(Runs);
        List<(Guid Run, Guid Upload)> brought = [];
        foreach (var run in runs)
        {
            brought.Add((run, await shop.UploadAsync(run, SampleLogs.Good())));
        }

        var results = await Task.WhenAll(brought.Select(b => shop.TakeAsync(b.Run, b.Upload)));

        Assert.All(results, result => Assert.Empty(result.Outcome.Refusals));
        var logged = await shop.Database.ReadAsync(db => db.WeldRuns.ToListAsync());
        Assert.Equal(Runs, logged.Count(r => r.Log is { ReachedEnd: true }));
        Assert.Empty(shop.StagedFiles);
    }

    [Fact]
    public async Task FullLine_IsTold_AndTheFileIsStillThere()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var run = await shop.EndedAsync();
        var upload = await shop.UploadAsync(run, SampleLogs.Good());
        var turn = await shop.Intake.TakeTurnAsync(CancellationToken.None);
        using var tired = new CancellationTokenSource();
        var waiting = Enumerable
            .Range(0, LogIntake.MostWaiting)
            .Select(_ => shop.Intake.TakeTurnAsync(tired.Token).AsTask())
            .ToList();

        var refused = await shop.TakeAsync(run, upload);
        await tired.CancelAsync();
        turn.Dispose();
        var taken = await shop.TakeAsync(run, upload);

        Assert.Equal("line-full", Assert.Single(refused.Outcome.Refusals).Code);
        Assert.Empty(taken.Outcome.Refusals);
        Assert.All(waiting, left => Assert.True(left.IsCanceled));
    }

    [Fact]
    public async Task Turns_AreTakenInTheOrderOfCalling_OneAtATime()
    {
        using var intake = new LogIntake();
        var first = await intake.TakeTurnAsync(CancellationToken.None);
        var second = intake.TakeTurnAsync(CancellationToken.None).AsTask();
        var third = intake.TakeTurnAsync(CancellationToken.None).AsTask();
        Assert.False(second.IsCompleted);

        first.Dispose();
        using (var turn = await second)
        {
            Assert.True(turn.IsAcquired);
            Assert.False(third.IsCompleted);
        }

        using var last = await third;
        Assert.True(last.IsAcquired);
    }
}
