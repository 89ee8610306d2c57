using System.Diagnostics;
using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using WeldTrace.Benchmarks.Logs;
using WeldTrace.Persistence.Loading;

namespace WeldTrace.Benchmarks.Million;

/// <summary>
/// A vessel's history and page, and recalls, among a million vessels, against statements written by hand in the same run. Answers are compared
/// value by value. Each figure is the median over vessels that lie far apart.
/// </summary>
internal sealed class MillionVessels(MillionShop shop)
{
    private const int Usual = 1_000_000;
    private const int Hits = 1000;
    private const int Subjects = 12;
    private const int WarmUp = 3;
    private readonly List<Ratio> _ratios = [];

    /// <param name="count">How many vessels, as it stands on the command line; a million when it says nothing.</param>
    public static async Task<int> RunAsync(string? count)
    {
        var vessels = count is null ? Usual : int.Parse(count, CultureInfo.InvariantCulture);
        await using MillionShop shop = new(vessels);
        var start = Stopwatch.GetTimestamp();
        var rows = await shop.FillAsync();
        var minutes = Stopwatch.GetElapsedTime(start).TotalMinutes;
        var gigabytes = await SizeAsync(shop) / 1e9;
        Console.WriteLine(
            $"{vessels} vessels and {rows} rows in {Ratio.Text(minutes)} minutes; {Ratio.Text(gigabytes)} GB"
        );
        var ratios = await new MillionVessels(shop).MeasureAsync();
        Console.WriteLine("| what | measured | reference | ratio | bar | |");
        Console.WriteLine("| --- | --- | --- | --- | --- | --- |");
        ratios.ToList().ForEach(ratio => Console.WriteLine(ratio.ToRow()));
        return ratios.All(ratio => ratio.Holds) ? 0 : 1;
    }

    private async Task<IReadOnlyList<Ratio>> MeasureAsync()
    {
        await HistoryAsync();
        await PageAsync();
        foreach (var recalled in RecalledThings.All)
        {
            await RecallAsync(recalled);
        }

        return _ratios;
    }

    private async Task HistoryAsync()
    {
        var byHand = await shop.AskAsync(db => Task.FromResult(new HistoryByHand(db)));
        List<double> app = [];
        List<double> hand = [];
        var records = 0;
        // The first turns compare the answers and warm the program up.
        for (var turn = 0; turn < 2 * WarmUp; turn++)
        {
            foreach (var serial in shop.Serials)
            {
                var (history, loading) = await TimedAsync(() =>
                    shop.AskAsync(db => db.FindVesselHistoryAsync(serial, CancellationToken.None))
                );
                var (rows, reading) = await TimedAsync(async () =>
                {
                    await using var connection = await shop.OpenAsync();
                    return await byHand.ReadAsync(connection, serial);
                });
                if (turn < WarmUp)
                {
                    HistoryByHand.RequireSame(rows, byHand.RowsOf(history!), serial);
                    records = rows.Count;
                }
                else
                {
                    app.Add(loading);
                    hand.Add(reading);
                }
            }
        }

        Add($"history of one vessel, {records} rows", app, hand, 20);
    }

    private async Task PageAsync()
    {
        using var auditor = await shop.Site.SignInAsync();
        List<double> pages = [];
        for (var turn = 0; turn < 2 * WarmUp; turn++)
        {
            foreach (var serial in shop.Serials)
            {
                var (_, time) = await TimedAsync(() =>
                    auditor.GetStringAsync(new Uri($"/vessels/{serial}", UriKind.Relative))
                );
                if (turn >= WarmUp)
                {
                    pages.Add(time);
                }
            }
        }

        AddLimit("page of a vessel, whole request", Median(pages), 100);
    }

    private async Task RecallAsync(Recalled recalled)
    {
        List<RecallQuestion> questions = [];
        for (var subject = 0; subject < Subjects; subject++)
        {
            questions.Add(await QuestionAsync(recalled, subject));
        }

        List<double> app = [];
        List<double> hand = [];
        var hits = 0;
        for (var turn = 0; turn < 4 * WarmUp; turn++)
        {
            foreach (var question in questions)
            {
                var (found, asking) = await TimedAsync(() => question.AskAsync(shop.Site.Services));
                var (rows, reading) = await TimedAsync(async () =>
                {
                    await using var connection = await shop.OpenAsync();
                    return await question.AskByHandAsync(connection);
                });
                RequireSame(found, rows, question);
                hits = Math.Max(hits, rows.Count);
                if (turn >= 2 * WarmUp)
                {
                    app.Add(asking);
                    hand.Add(reading);
                }
            }
        }

        Add($"recall by {recalled.What}, up to {hits} vessels", app, hand, 100);
    }

    private async Task<RecallQuestion> QuestionAsync(Recalled recalled, int subject)
    {
        // The newest tenth: a certificate stands for what was welded while it held.
        var serial = shop.SerialAt(0.95 + (0.02 * subject / Subjects));
        return await shop.AskAsync(async db =>
        {
            var site = await db.Sites.AsNoTracking().SingleAsync();
            var vessel = await db.Vessels.AsNoTracking().SingleAsync(v => v.Serial == serial);
            var welded = await db
                .WeldRuns.Where(r => r.VesselId == vessel.Id)
                .MinAsync(r => r.StartedAt);
            var first = site.DayOf(welded);
            var end = first.AddDays(shop.DaysOf(Hits * Share(recalled)));
            return new RecallQuestion(
                recalled,
                await recalled.NameAsync(db, serial),
                site.BeginOf(first),
                site.BeginOf(end)
            );
        });
    }

    // Of so many things that are used side by side, one is asked about.
    private static int Share(Recalled recalled) =>
        recalled.What switch
        {
            "an instrument and days" => 40,
            "a welder's certificate and days" => 20,
            _ => 1,
        };

    private static void RequireSame(
        IReadOnlyList<string?[]> found,
        IReadOnlyList<string?[]> rows,
        RecallQuestion question
    )
    {
        if (
            rows.Count == 0
            || found.Count != rows.Count
            || !found.Zip(rows).All(p => p.First.SequenceEqual(p.Second))
        )
        {
            throw new InvalidOperationException(
                $"{question.Recalled.What} {question.Name}: {found.Count} vessels by the application, {rows.Count} by hand, or not the same."
            );
        }
    }

    private void Add(string what, List<double> app, List<double> hand, double limit)
    {
        AddLimit(what, Median(app), limit);
        var ratio = Ratio.OfTimes("the same", Median(app), "by hand", Median(hand), 1.5);
        Console.WriteLine(ratio.ToRow());
        _ratios.Add(ratio);
    }

    private void AddLimit(string what, double milliseconds, double limit)
    {
        Ratio ratio = new(
            what,
            Ratio.Text(milliseconds) + " ms",
            $"{limit} ms",
            milliseconds,
            limit
        );
        Console.WriteLine(ratio.ToRow());
        _ratios.Add(ratio);
    }

    private static async Task<(T Result, double Milliseconds)> TimedAsync<T>(Func<Task<T>> act)
    {
        var start = Stopwatch.GetTimestamp();
        var result = await act();
        return (result, Stopwatch.GetElapsedTime(start).TotalMilliseconds);
    }

    private static double Median(List<double> times) => times.Order().ElementAt(times.Count / 2);

    private static async Task<double> SizeAsync(MillionShop shop)
    {
        await using NpgsqlConnection connection = new(shop.Owner);
        await connection.OpenAsync();
        await using NpgsqlCommand size = new(
            "SELECT pg_database_size(current_database())::float8",
            connection
        );
        return (double)(await size.ExecuteScalarAsync())!;
    }
}
