using System.Diagnostics;
using System.Text;
using System.Text.RegularExpressions;
using WeldTrace.Domain.Ledger;
using Xunit;

namespace WeldTrace.Verify.Tests;

/// <summary>Runs the commands that VERIFY.txt gives, in a shell, on the unpacked bundle.</summary>
public sealed partial class InstructionsTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("verify-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Commands_GoodBundle_AllPass()
    {
        var commands = Commands(await UnpackAsync(_ => { }));

        Assert.Equal(4, commands.Count);
        Assert.StartsWith(SampleBundle.Key.Fingerprint, Shell(commands[0]).Output);
        Assert.Equal("Verified OK\nVerified OK\n", Shell(commands[1]).Output);
        var (status, sums) = Shell(commands[2]);
        Assert.Equal(0, status);
        Assert.Equal(18, sums.Split(": OK\n").Length - 1);
        Assert.Equal(["./manifest.json", "./manifest.sig"], Lines(Shell(commands[3]).Output));
    }

    [Fact]
    public async Task Commands_TamperedBundle_AllFail()
    {
        using var other = SiteKey.Create();
        var commands = Commands(
            await UnpackAsync(files =>
            {
                files["site-key.pem"] = Encoding.ASCII.GetBytes(other.PublicKey.Pem);
                files["traveler.pdf"][0] ^= 1;
                files.Add("logs/note.txt", [1]);
            })
        );

        Assert.StartsWith(other.Fingerprint, Shell(commands[0]).Output);
        Assert.DoesNotContain("Verified OK", Shell(commands[1]).Output);
        var (status, sums) = Shell(commands[2]);
        Assert.NotEqual(0, status);
        Assert.Contains("traveler.pdf: FAILED", sums);
        Assert.Contains("./logs/note.txt", Lines(Shell(commands[3]).Output));
    }

    private async Task<string> UnpackAsync(Action<BundleFiles> change)
    {
        var files = await BundleFiles.SampleAsync();
        change(files);
        foreach (var (path, bytes) in files)
        {
            var target = Path.Combine(_folder, path);
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            await File.WriteAllBytesAsync(target, bytes);
        }
        return Encoding.UTF8.GetString(files[BundlePaths.Instructions]);
    }

    private static List<string> Commands(string instructions) =>
        [
            .. NumberedStep()
                .Matches(instructions)
                .Select(step => step.Groups["commands"].Value.Replace("    ", "")),
        ];

    private (int Status, string Output) Shell(string commands)
    {
        var start = new ProcessStartInfo("/bin/sh", ["-c", commands])
        {
            WorkingDirectory = _folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using var shell = Process.Start(start)!;
        var output = shell.StandardOutput.ReadToEnd();
        shell.WaitForExit();
        return (shell.ExitCode, output);
    }

    private static IEnumerable<string> Lines(string text) =>
        text.Split('\n', StringSplitOptions.RemoveEmptyEntries).Order(StringComparer.Ordinal);

    [GeneratedRegex(@"^\d\. [^\n]*\n\n(?<commands>(    [^\n]*\n)+)", RegexOptions.Multiline)]
    private static partial Regex NumberedStep();
}
