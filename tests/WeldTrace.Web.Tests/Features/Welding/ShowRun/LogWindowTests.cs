using WeldTrace.Persistence.ProcessLogStore;
using WeldTrace.ProcessLogs;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Logs;

namespace WeldTrace.Web.Tests.Features.Welding.ShowRun;

/// <summary>What is drawn of a stretch from the few rows loaded for it equals what the whole log gives.</summary>
public sealed class LogWindowTests(PostgresServerFixture server)
{
    private const int Rows = 120_000;
    private const int Buckets = 200;

    [Fact]
    public async Task FindLogWindowAsync_AnyStretch_DrawsLikeTheWholeLog()
    {
        await using var database = await SiteDatabase.CreateAsync(server);
        using var csv = new MemoryStream();
        new ReferenceLog(Rows).WriteCsv(csv);
        csv.Position = 0;
        var log = (
            await ProcessLogReader.ReadAsync(
                csv,
                ReferenceLog.Mapping,
                cancellation: TestContext.Current.CancellationToken
            )
        ).Log!;
        var id = Guid.CreateVersion7();
        await using (var db = database.CreateDbContext())
        {
            db.AddProcessLog(id, log, null);
            await db.SaveChangesAsync(CancellationToken.None);
        }

        foreach (var (from, to) in Stretches())
        {
            await using var db = database.CreateDbContext();
            var window = await db.FindLogWindowAsync(
                id,
                _ => [1, 4],
                from,
                to,
                Buckets,
                CancellationToken.None
            );
            Assert.Equal(
                LogChart.Envelope(log, log.Header.Columns[4], from, to, Buckets),
                LogChart.Envelope(window!, window!.Header.Columns[4], from, to, Buckets)
            );
        }
    }

    private static IEnumerable<(double From, double To)> Stretches()
    {
        yield return (double.NegativeInfinity, double.PositiveInfinity);
        yield return (-5, 100);
        yield return (59.9, 60.2);
        var random = new Random(11);
        for (var i = 0; i < 40; i++)
        {
            var from = random.NextDouble() * Rows / 2000;
            yield return (from, from + Math.Pow(10, (random.NextDouble() * 4) - 2));
        }
    }
}
