using System.Diagnostics;
using System.Globalization;
using Xunit;

namespace WeldTrace.Persistence.Tests.PrivateServer;

/// <summary>Another process that runs a private server, as the application does.</summary>
internal sealed class ServerHost : IDisposable
{
    private ServerHost(Process process, string firstLine)
    {
        Process = process;
        var words = firstLine.Split(' ', 3);
        Assert.Equal("ready", words[0]);
        ServerId = int.Parse(words[1], CultureInfo.InvariantCulture);
        Owner = words[2];
    }

    public Process Process { get; }

    public int ServerId { get; }

    public string Owner { get; }

    public static async Task<ServerHost> StartAsync(string folder)
    {
        var process = Launch(folder);
        return new ServerHost(process, await FirstLineOfAsync(process));
    }

    public static async Task<string> FirstLineAsync(string folder)
    {
        using var process = Launch(folder);
        var line = await FirstLineOfAsync(process);
        process.StandardInput.Close();
        await process.WaitForExitAsync();
        return line;
    }

    public void Dispose()
    {
        Process.Kill();
        Process.Dispose();
    }

    private static async Task<string> FirstLineOfAsync(Process process) =>
        await process.StandardOutput.ReadLineAsync() ?? "";

    private static Process Launch(string folder)
    {
        var program = Path.Combine(AppContext.BaseDirectory, "WeldTrace.PrivateServerHost.dll");
        var start = new ProcessStartInfo("dotnet", ["exec", program, folder])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
        };
        return Process.Start(start)!;
    }
}
