using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using WeldTrace.Persistence;
using WeldTrace.RunWriter;
using WeldTrace.Web.LogJudging;

// A process of its own for tests that kill the application: the application's database and handlers, and two people
// who log run after run. Each act is told on the output once it is acknowledged; then the process may die.
// Words: data folder, name of this start, file with the process log of a run.
var builder = Host.CreateApplicationBuilder();
builder.Configuration["Database:Folder"] = args[0];
builder.Logging.ClearProviders();
builder.Services.AddSingleton(TimeProvider.System);
builder.Services.AddPersistence();
using var host = builder.Build();
await host.StartAsync();

var shop = new PlannedShop(args[1]);
var log = await File.ReadAllBytesAsync(args[2]);
var contexts = host.Services.GetRequiredService<IDbContextFactory<WeldTraceDbContext>>();
var configuration = host.Services.GetRequiredService<IConfiguration>();
await Writing.AddAsync(contexts, shop.Ground);
await Writing.AddPapersAsync(contexts);
using var intake = new LogIntake();
await Task.WhenAll(
    new RunLogger("A", shop, contexts, configuration, intake, log).LogRunsAsync(),
    new RunLogger("B", shop, contexts, configuration, intake, log).LogRunsAsync()
);
