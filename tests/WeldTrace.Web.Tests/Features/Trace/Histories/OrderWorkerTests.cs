using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using WeldTrace.Domain.Ledger;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Roles;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Trace.Histories;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Tests.Features.Trace.Histories;

/// <summary>What becomes of an order whose making is stopped: by a full disk, a lost vessel, the end of the program.</summary>
public sealed class OrderWorkerTests(PostgresServerFixture server) : IDisposable
{
    // errno of Linux: ENOSPC, as the platform puts it into HResult.
    private const int NoSpaceLeft = 28;
    private static readonly Uri Address = new("https://records.example/");

    private readonly TestFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task FullDisk_IsToldAndLeavesNothing_AndTheNextOrderIsMade()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var actor = await site.EnterAsync("Fay Moreau", Role.Auditor);
        var bundles = new Bundles
        {
            Write = (serial, _) =>
                serial == "V-2"
                    ? throw new IOException("No space left on device", NoSpaceLeft)
                    : Task.CompletedTask,
        };
        await using var run = Run.Start(site, _folder, bundles);

        var full = run.Place(site, actor, "V-1", "V-2");
        var next = run.Place(site, actor, "V-1");

        var failed = await run.EndAsync(full, OrderState.Failed);
        Assert.Contains("no room", failed.Fault, StringComparison.Ordinal);
        Assert.Equal(["order.json"], run.FilesOf(full));
        await run.EndAsync(next, OrderState.Ready);
        Assert.Equal(["histories.zip", "order.json"], run.FilesOf(next));
    }

    [Fact]
    public async Task UnexpectedFailure_LostVessel_AndLeftPerson_AreTold()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var actor = await site.EnterAsync("Fay Moreau", Role.Auditor);
        var bundles = new Bundles
        {
            Write = (serial, _) =>
                serial == "BROKEN"
                    ? throw new InvalidOperationException("On purpose.")
                    : Task.CompletedTask,
        };
        await using var run = Run.Start(site, _folder, bundles);

        var broken = await run.EndAsync(run.Place(site, actor, "BROKEN"), OrderState.Failed);
        var lost = await run.EndAsync(run.Place(site, actor, Bundles.Lost), OrderState.Failed);
        var stranger = SamplePeople.QualityManager;
        var left = await run.EndAsync(run.Place(site, stranger, "V-1"), OrderState.Failed);

        Assert.Contains("the log of the site says why", broken.Fault, StringComparison.Ordinal);
        Assert.Contains($"no vessel {Bundles.Lost}", lost.Fault, StringComparison.Ordinal);
        Assert.Contains("no active account", left.Fault, StringComparison.Ordinal);
    }

    [Fact]
    public async Task EndOfTheProgram_PutsTheOrderBack_AndTheNextStartMakesIt()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var actor = await site.EnterAsync("Fay Moreau", Role.Auditor);
        var reached = new TaskCompletionSource();
        var slow = new Bundles
        {
            Write = (serial, token) =>
            {
                if (serial != "V-2")
                {
                    return Task.CompletedTask;
                }

                reached.TrySetResult();
                return Task.Delay(Timeout.Infinite, token);
            },
        };
        HistoryOrder order;
        await using (var first = Run.Start(site, _folder, slow))
        {
            order = first.Place(site, actor, "V-1", "V-2");
            await reached.Task.WaitAsync(
                TimeSpan.FromSeconds(20),
                TestContext.Current.CancellationToken
            );
            Assert.Equal(1, first.Orders.Find(order.Id)!.Done);
        }

        await using var second = Run.Start(site, _folder, new Bundles());
        var made = await second.EndAsync(order, OrderState.Ready);

        Assert.Equal(1, made.Attempts);
        Assert.Equal(["histories.zip", "order.json"], second.FilesOf(order));
    }

    /// <summary>Bundles that are only a few bytes; what they hold is looked at elsewhere.</summary>
    private sealed class Bundles : IHistoryBundles
    {
        public const string Lost = "LOST";

        public Func<string, CancellationToken, Task> Write { get; init; } =
            (_, _) => Task.CompletedTask;

        public async Task<bool> WriteAsync(
            string serial,
            Uri site,
            Actor actor,
            FileStream output,
            CancellationToken cancellation
        )
        {
            await Write(serial, cancellation);
            await output.WriteAsync("PK"u8.ToArray(), cancellation);
            return serial != Lost;
        }
    }

    /// <summary>The worker between a start of the program and its end.</summary>
    private sealed class Run : IAsyncDisposable
    {
        private readonly TestFolder _folder;
        private readonly ServiceProvider _services;
        private readonly OrderWorker _worker;

        private Run(WorkingSite site, TestFolder folder, IHistoryBundles bundles)
        {
            _folder = folder;
            var configuration = new ConfigurationBuilder()
                .AddInMemoryCollection([
                    new("Database:Folder", folder.Path),
                    new("Histories:LeaveFreeMegabytes", "1"),
                ])
                .Build();
            Directory.CreateDirectory(folder.Path);
            _services = new ServiceCollection()
                .AddLogging()
                .AddSingleton<IConfiguration>(configuration)
                .AddSingleton<DatabaseSettings>()
                .AddSingleton<HistorySettings>()
                .AddSingleton<OrderFiles>()
                .AddSingleton<HistoryOrders>()
                .AddSingleton<TimeProvider>(site.Clock)
                .AddSingleton(site.Sites)
                .AddSingleton(new SiteKeyFolder(folder.Path))
                .AddSingleton<IDbContextFactory<WeldTraceDbContext>>(site.Database)
                .AddSingleton(bundles)
                .AddScoped<CollectionDesk>()
                .BuildServiceProvider();
            _worker = new OrderWorker(_services, NullLogger<OrderWorker>.Instance);
        }

        public HistoryOrders Orders => _services.GetRequiredService<HistoryOrders>();

        public static Run Start(WorkingSite site, TestFolder folder, IHistoryBundles bundles)
        {
            var run = new Run(site, folder, bundles);
            _ = run._worker.StartAsync(CancellationToken.None);
            return run;
        }

        public HistoryOrder Place(WorkingSite site, Actor actor, params string[] serials)
        {
            site.Clock.Advance(TimeSpan.FromSeconds(1));
            return Accept.Value(Orders.Place("Some vessels", serials, Address, actor));
        }

        public Task<HistoryOrder> EndAsync(HistoryOrder order, OrderState state) =>
            DemoOrders.EndAsync(Orders, order.Id, state);

        public IEnumerable<string?> FilesOf(HistoryOrder order) =>
            Directory
                .EnumerateFiles(Path.Combine(_folder.Path, "histories", order.Id.ToString("N")))
                .Select(Path.GetFileName)
                .Order(StringComparer.Ordinal);

        public async ValueTask DisposeAsync()
        {
            await _worker.StopAsync(CancellationToken.None);
            _worker.Dispose();
            await _services.DisposeAsync();
        }
    }
}
