using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Logging.Abstractions;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.Vessels;
using WeldTrace.Domain.Welding;
using WeldTrace.Persistence;
using WeldTrace.Persistence.LedgerStore;
using WeldTrace.Persistence.PrivateServer;
using WeldTrace.Persistence.ProcessLogStore;
using WeldTrace.TestSupport.Database;
using WeldTrace.Web.Tests.Features.Welding;

namespace WeldTrace.Web.Tests.Crash;

/// <summary>Database and application are killed while two people log runs; then everything is read again.</summary>
public sealed class CrashTests
{
    private const int LongestPauseMilliseconds = 400;

    // Two kills a round. Three rounds are what every run of the tests has time for; WELDTRACE_KILL_ROUNDS=100 makes 200 kills.
    private static readonly int Rounds = int.Parse(
        Environment.GetEnvironmentVariable("WELDTRACE_KILL_ROUNDS") ?? "3",
        CultureInfo.InvariantCulture
    );

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Kill_WhileRunsAreLogged_LosesNothingAcknowledgedAndLeavesNothingHalfWritten()
    {
        using var folder = new TestFolder();
        using var log = new TestFolder(".csv");
        await File.WriteAllBytesAsync(log.Path, SampleLogs.Good(), Cancellation);
        List<(string Act, Guid Run)> acknowledged = [];
        var moments = new Random(Rounds);
        for (var round = 1; round <= Rounds; round++)
        {
            using var writer = WriterProcess.Start(folder.Path, $"{round}", log.Path);
            await writer.AcknowledgesAsync(more: 11, Cancellation);
            await Task.Delay(moments.Next(LongestPauseMilliseconds), Cancellation);
            writer.KillDatabase();
            // It goes on by itself once the database is back.
            await writer.AcknowledgesAsync(more: 11 + (round % 4), Cancellation);
            await Task.Delay(moments.Next(LongestPauseMilliseconds), Cancellation);
            await writer.KillEverythingAsync();
            acknowledged.AddRange(writer.Acknowledged);
            TestContext.Current.SendDiagnosticMessage($"{2 * round} kills");
        }

        File.Delete(log.Path);
        await using var server = new PrivatePostgresServer(
            new PrivateServerSettings(folder.Path),
            NullLogger<PrivatePostgresServer>.Instance
        );
        await server.StartAsync(Cancellation);
        await using var db = new WeldTraceDbContext(
            new DbContextOptionsBuilder<WeldTraceDbContext>()
                .UseWeldTrace(server.OwnerConnectionString("weldtrace"))
                .Options
        );

        Assert.Equal(4, acknowledged.Select(a => a.Act).Distinct().Count());
        var runs = await db.WeldRuns.AsNoTracking().ToDictionaryAsync(r => r.Id, Cancellation);
        Assert.All(acknowledged, a => Assert.True(IsThere(a.Act, runs[a.Run]), $"{a} is lost"));
        foreach (var run in runs.Values)
        {
            await IsWholeAsync(db, run);
        }

        var report = await db.CheckLedgerAsync(Cancellation);
        Assert.Empty(report.Problems);
        Assert.True(report.Records > acknowledged.Count(a => a.Act == "started"));
    }

    private static bool IsThere(string act, WeldRun run) =>
        act switch
        {
            "started" => true,
            "ended" => run.State == WeldRunState.Ended,
            "logged" => run.Log is not null,
            "signed" => run.SignedAt is not null,
            _ => throw new InvalidOperationException($"'{act}' is no act."),
        };

    /// <summary>Every act changes several records: all of them tell the same story.</summary>
    private static async Task IsWholeAsync(WeldTraceDbContext db, WeldRun run)
    {
        var tool = await db.Tools.AsNoTracking().SingleAsync(t => t.Id == run.ToolId);
        var vessel = await db.Vessels.AsNoTracking().SingleAsync(v => v.Id == run.VesselId);
        var log = await db.FindProcessLogAsync(run.Id, Cancellation);
        var signatures = await db.Signatures.CountAsync(s => s.SignedId == run.Id, Cancellation);

        Assert.Equal(run.Log?.Rows, log?.Header.SampleCount);
        Assert.Equal(run.SignedAt is null ? 0 : 1, signatures);
        Assert.Equal(
            run.SignedAt is null ? StepState.InProgress : StepState.Passed,
            vessel.Step(run.StepSequence)!.State
        );
        Assert.Equal(run.Travelled is null ? [] : [run.Id], tool.Uses.Select(u => u.RunId));
        Assert.Equal(
            run.Log is null ? ChargeBasis.PlannedPath : ChargeBasis.ProcessLog,
            tool.Uses is [var use, ..] ? use.Basis : ChargeBasis.PlannedPath
        );
    }
}
