using BenchmarkDotNet.Columns;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Diagnosers;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Loggers;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;
using BenchmarkDotNet.Validators;

namespace WeldTrace.Benchmarks;

// Not "Program": that is the application, which the benchmarks start.
internal static class Runner
{
    private static async Task<int> Main(string[] args)
    {
        if (args is ["logs"])
        {
            return await Logs.LogRatios.RunAsync();
        }

        if (args is ["arrivals"])
        {
            return await Logs.ArrivalsAtOnce.RunAsync();
        }

        if (args is ["pictures"])
        {
            return await Pictures.PictureIntake.RunAsync();
        }

        if (args is ["million", ..])
        {
            return await Million.MillionVessels.RunAsync(args.ElementAtOrDefault(1));
        }

        // In process: the generated project of the usual toolchain cannot be restored from the locked package list.
        var config = ManualConfig
            .CreateEmpty()
            .AddJob(
                Job.Default.WithMaxIterationCount(30)
                    .WithToolchain(
                        new InProcessEmitToolchain(TimeSpan.FromMinutes(30), logOutput: true)
                    )
            )
            .AddDiagnoser(MemoryDiagnoser.Default)
            .AddColumnProvider(DefaultColumnProviders.Instance)
            .AddValidator(JitOptimizationsValidator.FailOnError)
            .WithArtifactsPath(Path.Combine(Path.GetTempPath(), "weld-records-benchmarks"))
            .AddLogger(ConsoleLogger.Default);
        var summaries = BenchmarkSwitcher.FromAssembly(typeof(Runner).Assembly).Run(args, config);
        return summaries.Any(s => s.HasCriticalValidationErrors || s.Reports.Any(r => !r.Success))
            ? 1
            : 0;
    }
}
