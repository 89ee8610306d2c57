using System.Data.Common;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.Time.Testing;
using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Paths;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Welding;
using WeldTrace.Web.Features.Welding.BringLog;
using WeldTrace.Web.Features.Welding.EndRun;
using WeldTrace.Web.Features.Welding.ReadLog;
using WeldTrace.Web.Features.Welding.SignRun;
using WeldTrace.Web.Files;
using WeldTrace.Web.LogJudging;

namespace WeldTrace.RunWriter;

/// <summary>One person who starts, ends, logs and signs a run on one new vessel after another.</summary>
internal sealed class RunLogger(
    string person,
    PlannedShop shop,
    IDbContextFactory<WeldTraceDbContext> contexts,
    IConfiguration configuration,
    LogIntake intake,
    byte[] log
)
{
    private static readonly TimeSpan _pauseAfterFailure = TimeSpan.FromMilliseconds(100);
    private readonly FakeTimeProvider _clock = new(SampleTime.Start.AddHours(1));
    private readonly string _machine = shop.Machine(person).Name;

    private StagedLogs Staged => new(configuration, _clock);

    private ArrivedLogs Arrivals => new(configuration, _clock);

    public async Task LogRunsAsync()
    {
        await Writing.AddAsync(contexts, [shop.Machine(person)]);
        for (var number = 1; ; number++)
        {
            try
            {
                await LogRunAsync(number);
            }
            catch (Exception broken)
                when (broken is DbException or DbUpdateException or InvalidOperationException)
            {
                // The database went away under the act: nobody was told that it was done. The next vessel comes.
                await Console.Error.WriteLineAsync($"{person}{number}: {broken.Message}");
                await Task.Delay(_pauseAfterFailure);
            }
        }
    }

    /// <summary>Does all of a run but reading its log.</summary>
    public async Task<(Guid Run, Guid Upload)> WeldAsync(int number)
    {
        await Writing.AddAsync(contexts, [shop.Machine(person)]);
        var (vessel, tool) = shop.Next(person, number);
        await Writing.AddAsync(contexts, [vessel, tool]);
        var run = Guid.CreateVersion7();
        Accept.All(await StartAsync(run, vessel.Serial, tool.Mark));
        Accept.All(await EndAsync(run));
        return (run, await BringAsync(run));
    }

    private async Task LogRunAsync(int number)
    {
        var (vessel, tool) = shop.Next(person, number);
        await Writing.AddAsync(contexts, [vessel, tool]);
        var run = Guid.CreateVersion7();
        await AcknowledgeAsync("started", run, await StartAsync(run, vessel.Serial, tool.Mark));
        await AcknowledgeAsync("ended", run, await EndAsync(run));
        await AcknowledgeAsync("logged", run, await TakeAsync(run, await BringAsync(run)));
        await AcknowledgeAsync("signed", run, await SignAsync(run));
    }

    private static Task AcknowledgeAsync(string act, Guid run, Outcome outcome)
    {
        Accept.All(outcome);
        return Console.Out.WriteLineAsync($"{act} {run}");
    }

    private Task<Outcome> StartAsync(Guid run, string serial, string tool) =>
        new StartRunHandler(contexts, _clock).HandleAsync(
            new(serial, 10),
            new StartRunForm
            {
                Id = run,
                Tool = tool,
                Machine = _machine,
                Travel = RotationSense.CounterClockwise,
                JointPreparation = true,
                FitUp = true,
                Parameters = true,
            },
            SamplePeople.Operator,
            CancellationToken.None
        );

    private Task<Outcome> EndAsync(Guid run)
    {
        _clock.Advance(TimeSpan.FromMinutes(4));
        return new EndRunHandler(contexts, _clock).HandleAsync(
            run,
            new EndRunForm(),
            SamplePeople.Operator,
            CancellationToken.None
        );
    }

    private async Task<Guid> BringAsync(Guid run)
    {
        var kept = await new LogUploadHandler(contexts, Staged).HandleAsync(
            run,
            "run.csv",
            new MemoryStream(log),
            log.Length,
            SamplePeople.Operator,
            CancellationToken.None
        );
        return Accept.Value(kept).Id;
    }

    /// <summary>Has the log that was brought read, with its columns as they seem to mean.</summary>
    public async Task<Outcome> TakeAsync(Guid run, Guid upload)
    {
        var handler = new ReadLogHandler(
            contexts,
            Staged,
            Arrivals,
            intake,
            new SignalWatch(contexts),
            _clock
        );
        var seen = await handler.FindAsync(run, upload, CancellationToken.None);
        var form = new ReadLogForm
        {
            IsNewMapping = true,
            Columns =
            [
                .. seen!.Preview!.Guess.Columns.Select(c => new ReadLogColumn
                {
                    Channel = c.Channel.ToString(),
                    Unit = c.Unit,
                    Factor = FormattableString.Invariant($"{c.Factor}"),
                }),
            ],
        };
        var taken = await handler.HandleAsync(
            run,
            upload,
            form,
            SamplePeople.Operator,
            CancellationToken.None
        );
        return taken.Outcome;
    }

    // As SignRunHandler does, but for the password.
    private async Task<Outcome> SignAsync(Guid run)
    {
        await using var db = await contexts.CreateDbContextAsync();
        var records = (await db.FindRunAsync(run, CancellationToken.None))!;
        var at = _clock.GetUtcNow();
        Accept.All(records.Run.Sign(records.Vessel, SamplePeople.Operator, at));
        db.Add(Signature.Of(records.Run, SamplePeople.Operator, SignRunHandler.Meaning, at));
        return await db.SaveAsync(CancellationToken.None);
    }
}
