using System.Diagnostics;

namespace WeldTrace.Browser.Tests;

/// <summary>The data folder of the invented workshop, filled once; whoever needs a workshop alone takes a copy, which is a start of seconds.</summary>
internal sealed class PreparedWorkshop : IDisposable
{
    private readonly string _folder = OwnSite.NewFolder();

    public async Task FillAsync()
    {
        // Stopped in good order, so that the copies need no recovery.
        await using var site = new OwnSite(_folder, OwnSite.FreePort(), true).Started();
    }

    /// <summary>Copies the folder with its owners and modes, on which the database server insists.</summary>
    public async Task CopyToAsync(string folder)
    {
        using var copy = new Process
        {
            StartInfo = new("cp", ["--archive", _folder, folder]) { RedirectStandardError = true },
        };
        copy.Start();
        var said = await copy.StandardError.ReadToEndAsync();
        await copy.WaitForExitAsync();
        Assert.True(copy.ExitCode == 0, $"cp ended with {copy.ExitCode}: {said}");
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
