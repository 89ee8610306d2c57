extern alias writer;

using System.Diagnostics;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;
using WeldTrace.Benchmarks.Pages;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Roles;
using WeldTrace.TestSupport.Logs;
using WeldTrace.Web.LogJudging;
using writer::WeldTrace.RunWriter;

namespace WeldTrace.Benchmarks.Logs;

/// <summary>Twenty logs of 240,000 rows at once: all are kept, and meanwhile pages and small saves stay quick.</summary>
internal sealed class ArrivalsAtOnce(
    HttpClient browser,
    NpgsqlConnection database,
    IDbContextFactory<WeldTraceDbContext> contexts
)
{
    private const int Logs = 20;
    private const int Rows = 240_000;
    private static readonly Uri _page = new("/vessels/NR10-0001", UriKind.Relative);
    private static readonly TimeSpan _quiet = TimeSpan.FromSeconds(8);

    public static async Task<int> RunAsync()
    {
        await using var site = DemoSite.Start();
        using var browser = await site.SignInAsync();
        var owner = site.Services.GetRequiredService<IDatabaseConnections>().Current.Owner;
        await using var database = new NpgsqlConnection(owner);
        await database.OpenAsync();
        var contexts = site.Services.GetRequiredService<IDbContextFactory<WeldTraceDbContext>>();
        var brought = await BringAsync(site.Services, contexts);
        var ratios = await new ArrivalsAtOnce(browser, database, contexts).MeasureAsync(brought);
        Console.WriteLine("| what | measured | reference | ratio | bar | |");
        Console.WriteLine("| --- | --- | --- | --- | --- | --- |");
        ratios.ForEach(ratio => Console.WriteLine(ratio.ToRow()));
        return ratios.TrueForAll(ratio => ratio.Holds) ? 0 : 1;
    }

    private static async Task<IReadOnlyList<Func<Task>>> BringAsync(
        IServiceProvider services,
        IDbContextFactory<WeldTraceDbContext> contexts
    )
    {
        using var file = new MemoryStream();
        new ReferenceLog(Rows).WriteCsv(file);
        var shop = new PlannedShop("B");
        await Writing.AddAsync(contexts, shop.Ground);
        await Writing.AddPapersAsync(contexts);
        List<Func<Task>> brought = [];
        for (var person = 1; person <= Logs; person++)
        {
            var logger = new RunLogger(
                FormattableString.Invariant($"P{person}"),
                shop,
                contexts,
                services.GetRequiredService<IConfiguration>(),
                services.GetRequiredService<LogIntake>(),
                file.ToArray()
            );
            var (run, upload) = await logger.WeldAsync(1);
            brought.Add(() => logger.TakeAsync(run, upload));
        }

        return brought;
    }

    private async Task<List<Ratio>> MeasureAsync(IReadOnlyList<Func<Task>> brought)
    {
        await ExecuteAsync("CREATE TABLE one_row (number bigint)");
        var before = await LogsAsync();
        var quiet = await MeanwhileAsync(Task.Delay(_quiet));
        var start = Stopwatch.GetTimestamp();
        var taking = Task.WhenAll(brought.Select(take => Task.Run(take)));
        var busy = await MeanwhileAsync(taking);
        await taking;
        var kept = await LogsAsync() - before;
        Console.WriteLine(
            FormattableString.Invariant(
                $"{kept} of {Logs} kept in {Stopwatch.GetElapsedTime(start).TotalSeconds:F1} s; {busy.Pages.Count} pages and {busy.Saves.Count} saves meanwhile"
            )
        );
        return
        [
            new("logs that were not kept", Ratio.Text(Logs - kept), "", Logs - kept, 0),
            new(
                "page of a vessel meanwhile, 99 of 100 within",
                Ratio.Text(Percentile(busy.Pages)) + " ms",
                $"quiet: {Ratio.Text(Percentile(quiet.Pages))} ms",
                Percentile(busy.Pages),
                200
            ),
            Ratio.OfTimes(
                "save of one row meanwhile, 99 of 100 within",
                Percentile(busy.Saves),
                "quiet",
                Percentile(quiet.Saves),
                10
            ),
        ];
    }

    private async Task<int> LogsAsync()
    {
        await using var db = await contexts.CreateDbContextAsync();
        return await db.WeldRuns.CountAsync(run => run.Log != null);
    }

    private async Task<(List<double> Pages, List<double> Saves)> MeanwhileAsync(Task work)
    {
        var pages = TimesAsync(work, async () => await browser.GetStringAsync(_page));
        var saves = TimesAsync(work, () => ExecuteAsync("INSERT INTO one_row VALUES (1)"));
        return (await pages, await saves);
    }

    private static async Task<List<double>> TimesAsync(Task work, Func<Task> act)
    {
        List<double> times = [];
        while (!work.IsCompleted)
        {
            var start = Stopwatch.GetTimestamp();
            await act();
            times.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
            // A person looks at a page before the next.
            await Task.Delay(20);
        }

        return times;
    }

    private async Task ExecuteAsync(string statement)
    {
        await using var command = new NpgsqlCommand(statement, database);
        await command.ExecuteNonQueryAsync();
    }

    private static double Percentile(List<double> times) =>
        times.Order().ElementAt((int)Math.Ceiling(0.99 * times.Count) - 1);
}
