using System.Diagnostics;
using System.Text;
using System.Text.RegularExpressions;
using WeldTrace.Domain.Ledger;
using Xunit;

namespace WeldTrace.Verify.Tests;

/// <summary>Runs the commands that VERIFY.md gives, in a shell, on the unpacked bundle.</summary>
public sealed partial class InstructionsTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("verify-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Commands_GoodBundle_AllPass()
    {
        var commands = Commands(await UnpackAsync(_ => { }));

        Assert.Equal(5, commands.Count);
        Assert.StartsWith(SampleBundle.Key.Fingerprint, Shell(commands[0]).Output);
        Assert.Equal("Verified OK\nVerified OK\n", Shell(commands[1]).Output);
        var (status, sums) = Shell(commands[2]);
        Assert.Equal(0, status);
        Assert.Equal(24, sums.Split(": OK\n").Length - 1);
        Assert.Equal(["./manifest.json", "./manifest.sig"], Lines(Shell(commands[3]).Output));
        Assert.Equal(
            "5 entries in the signed ledger, 4 records as their newest entry says\n",
            Shell(commands[4]).Output
        );
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

    // Such a bundle could bear a good signature of the manifest: its hashes fit.
    [Fact]
    public async Task Commands_ChangedHistory_NameTheEntryAndTheRecord()
    {
        var entry = BundlePaths.Entry(2);
        const string record = "records/leak-test/0198c0de-0000-7000-8000-000000000020.json";
        var commands = Commands(
            await UnpackAsync(files =>
            {
                files[entry] = Replace(files[entry], "1.25", "1.24");
                files[record] = [.. files[record], (byte)' '];
            })
        );

        Assert.Equal(
            [
                "3 records as their newest entry says",
                "4 entries in the signed ledger",
                $"NOT in the signed ledger: {entry}",
                $"NOT what its newest entry says: {record}",
            ],
            Lines(Shell(commands[4]).Output.Replace(", ", "\n", StringComparison.Ordinal))
        );
    }

    // The file was called otherwise, and is listed in the manifest like any other.
    [Fact]
    public async Task BundleMadeEarlier_WithItsInstructionsAsText_Verifies()
    {
        var files = await BundleFiles.SampleAsync();
        files.Add("VERIFY.txt", files[BundlePaths.Instructions]);
        files.Remove(BundlePaths.Instructions);
        files.RemakeManifest();
        files.Sign(SampleBundle.Key);

        Assert.True(files.Verify().IsVerified);
    }

    private static byte[] Replace(byte[] text, string part, string replacement)
    {
        var found = Encoding.UTF8.GetString(text);
        Assert.Contains(part, found, StringComparison.Ordinal);
        return Encoding.UTF8.GetBytes(found.Replace(part, replacement, StringComparison.Ordinal));
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
        [.. ShellBlock().Matches(instructions).Select(step => step.Groups["commands"].Value)];

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

    [GeneratedRegex(
        @"^```sh\n(?<commands>.*?)^```$",
        RegexOptions.Multiline | RegexOptions.Singleline
    )]
    private static partial Regex ShellBlock();
}
