using System.Diagnostics;

namespace WeldTrace.TestSupport.Database;

/// <summary>Runs a script of the folder <c>deploy</c>, as an administrator would.</summary>
public static class Script
{
    public static async Task RunAsync(string name, params string[] words)
    {
        var (exitCode, said) = await StartAsync(name, words);
        if (exitCode != 0)
        {
            throw new InvalidOperationException($"{name} ended with status {exitCode}: {said}");
        }
    }

    public static async Task<string> RefusalAsync(string name, params string[] words)
    {
        var (exitCode, said) = await StartAsync(name, words);
        return exitCode == 0
            ? throw new InvalidOperationException($"{name} was not refused: {said}")
            : said;
    }

    private static async Task<(int ExitCode, string Said)> StartAsync(string name, string[] words)
    {
        var start = new ProcessStartInfo(Path.Combine(Repository(), "deploy", name), words)
        {
            RedirectStandardError = true,
            RedirectStandardOutput = true,
        };
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync();
        var errors = process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        return (process.ExitCode, await output + await errors);
    }

    private static string Repository()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "WeldTrace.sln")))
        {
            folder =
                Path.GetDirectoryName(folder)
                ?? throw new InvalidOperationException("Not below WeldTrace.sln.");
        }

        return folder;
    }
}
