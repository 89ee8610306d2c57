using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Archives;
using WeldTrace.Persistence.LedgerStore;
using WeldTrace.Persistence.PrivateServer;
using WeldTrace.Persistence.Roles;

namespace WeldTrace.Web.Features.LedgerView.Check;

/// <summary>
/// The check of the whole ledger from the command line, beside a WeldTrace that runs or without one:
/// exit status 0 when nothing was changed, 1 when something was, 2 when it could not be read.
/// </summary>
public static class LedgerCheckCommand
{
    /// <summary>First argument that asks for it.</summary>
    public const string Name = "check-ledger";

    /// <summary>Runs the check.</summary>
    /// <param name="args">Settings, as for the program itself.</param>
    /// <param name="output">Takes the report.</param>
    public static async Task<int> RunAsync(string[] args, TextWriter output)
    {
        ArgumentNullException.ThrowIfNull(output);
        var builder = Host.CreateApplicationBuilder(args);
        builder.Logging.SetMinimumLevel(LogLevel.Warning);
        try
        {
            var settings = new DatabaseSettings(builder.Configuration);
            var archive = ArchiveFolder.In(settings);
            return RunningDatabase.Find(settings) is { } running
                ? await CheckAsync(running, archive, output)
                : await StartAndCheckAsync(builder, archive, output);
        }
        catch (DatabaseStartException refusal)
        {
            await output.WriteLineAsync(refusal.Message);
            return 2;
        }
    }

    private static async Task<int> StartAndCheckAsync(
        HostApplicationBuilder builder,
        ArchiveFolder archive,
        TextWriter output
    )
    {
        builder.Services.AddPersistence();
        using var host = builder.Build();
        await host.StartAsync();
        try
        {
            var connections = host.Services.GetRequiredService<IDatabaseConnections>().Current;
            return await CheckAsync(connections.Application, archive, output);
        }
        finally
        {
            await host.StopAsync();
        }
    }

    private static async Task<int> CheckAsync(
        string connectionString,
        ArchiveFolder archive,
        TextWriter output
    )
    {
        await using var db = new WeldTraceDbContext(
            new DbContextOptionsBuilder<WeldTraceDbContext>()
                .UseWeldTrace(connectionString, archive)
                .Options
        );
        var report = await db.CheckLedgerAsync(CancellationToken.None, new Lines(output));
        foreach (var problem in report.Problems)
        {
            await output.WriteLineAsync(problem);
        }

        await output.WriteLineAsync(
            FormattableString.Invariant(
                $"{report.Entries} entries and {report.Records} records read again: "
            ) + (report.Problems.Count == 0 ? "nothing was changed" : "something was changed")
        );
        return report.Problems.Count == 0 ? 0 : 1;
    }

    /// <summary>One line for each part that is begun.</summary>
    private sealed class Lines(TextWriter output) : IProgress<LedgerProgress>
    {
        private string _part = "";

        public void Report(LedgerProgress value)
        {
            if (value.Part != _part)
            {
                _part = value.Part;
                output.WriteLine($"reading {value.Part}");
            }
        }
    }
}
