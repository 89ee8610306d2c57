using System.Diagnostics;

namespace WeldTrace.Persistence.PrivateServer;

/// <summary>Runs a short-lived program of the system to its end, without the application's environment.</summary>
internal static class Command
{
    public const string SearchPath = "/usr/local/sbin:/usr/local/bin:/usr/sbin:/usr/bin:/sbin:/bin";

    public static ProcessStartInfo Describe(IReadOnlyList<string> words)
    {
        var start = new ProcessStartInfo(words[0], words.Skip(1))
        {
            UseShellExecute = false,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = "/",
        };
        start.Environment.Clear();
        start.Environment["PATH"] = SearchPath;
        start.Environment["LC_ALL"] = "C.UTF-8";
        return start;
    }

    public static async Task<CommandResult> RunAsync(
        IReadOnlyList<string> words,
        CancellationToken cancellation
    )
    {
        using var process = new Process { StartInfo = Describe(words) };
        process.Start();
        process.StandardInput.Close();
        try
        {
            var output = process.StandardOutput.ReadToEndAsync(cancellation);
            var errors = process.StandardError.ReadToEndAsync(cancellation);
            await process.WaitForExitAsync(cancellation);
            return new CommandResult(process.ExitCode, await output, await errors);
        }
        catch (OperationCanceledException)
        {
            process.Kill(entireProcessTree: true);
            throw;
        }
    }
}
