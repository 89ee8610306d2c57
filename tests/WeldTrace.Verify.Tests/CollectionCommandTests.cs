using System.Diagnostics;
using System.Text;
using System.Text.RegularExpressions;
using WeldTrace.Domain.Ledger;
using Xunit;

namespace WeldTrace.Verify.Tests;

/// <summary>The command on a collection, and the commands that its VERIFY.md gives, run in a shell.</summary>
public sealed partial class CollectionCommandTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("verify-").FullName;
    private readonly StringWriter _output = new();
    private readonly StringWriter _error = new();

    public void Dispose()
    {
        Directory.Delete(_folder, recursive: true);
        _output.Dispose();
        _error.Dispose();
    }

    [Fact]
    public async Task Run_GoodCollection_SaysSoOfEachVesselAndReturns0()
    {
        var zip = await SampleCollection.WriteAsync();

        Assert.Equal(0, Run(zip, "--key", SampleBundle.Key.Fingerprint));

        Assert.StartsWith("verified: 2 vessels", _output.ToString());
        Assert.Contains("  verified NR-0142 (bundles/0001-NR-0142.zip", _output.ToString());
        Assert.Contains("  verified NR-0143", _output.ToString());
        Assert.Contains("the one that you named", _output.ToString());
    }

    [Fact]
    public async Task Run_ForgedHistory_NamesTheVesselAndReturns1()
    {
        var files = await SampleCollection.OpenAsync();
        var bundle = BundleFiles.Unpack(files[SampleCollection.Second]);
        bundle["traveler.pdf"][0] ^= 1;
        files[SampleCollection.Second] = bundle.Pack();

        Assert.Equal(1, Run(files.Pack()));

        Assert.StartsWith("NOT VERIFIED", _output.ToString());
        Assert.Contains("changed " + SampleCollection.Second, _output.ToString());
        Assert.Contains("  verified NR-0142", _output.ToString());
        Assert.Contains("  NOT VERIFIED NR-0143", _output.ToString());
        Assert.Contains("    changed traveler.pdf", _output.ToString());
    }

    [Fact]
    public async Task Instructions_OfAGoodCollection_AllPass()
    {
        var commands = await UnpackAsync(_ => { });

        Assert.Equal(4, commands.Count);
        Assert.StartsWith(SampleBundle.Key.Fingerprint, Shell(commands[0]));
        Assert.Equal("Verified OK\n", Shell(commands[1]));
        Assert.Equal(5, Shell(commands[2]).Split(": OK\n").Length - 1);
        Assert.Equal(
            ["./contents.json", "./contents.sig"],
            Shell(commands[3]).Split('\n', StringSplitOptions.RemoveEmptyEntries).Order()
        );
    }

    [Fact]
    public async Task Instructions_OfAForgedCollection_AllFail()
    {
        using var other = SiteKey.Create();
        var commands = await UnpackAsync(files =>
        {
            files[CollectionPaths.SiteKey] = Encoding.ASCII.GetBytes(other.PublicKey.Pem);
            files[SampleCollection.First][100] ^= 1;
            files["bundles/0003-x.zip"] = [1];
        });

        Assert.StartsWith(other.Fingerprint, Shell(commands[0]));
        Assert.DoesNotContain("Verified OK", Shell(commands[1]));
        Assert.Contains($"{SampleCollection.First}: FAILED", Shell(commands[2]));
        Assert.Contains("./bundles/0003-x.zip", Shell(commands[3]));
    }

    private int Run(byte[] zip, params string[] args)
    {
        var path = Path.Combine(_folder, "collection.zip");
        File.WriteAllBytes(path, zip);
        return VerifyCommand.Run([path, .. args], _output, _error);
    }

    private async Task<IReadOnlyList<string>> UnpackAsync(Action<SampleCollection> change)
    {
        var files = await SampleCollection.OpenAsync();
        change(files);
        foreach (var (path, bytes) in files)
        {
            var target = Path.Combine(_folder, path);
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            await File.WriteAllBytesAsync(target, bytes);
        }
        var text = Encoding.UTF8.GetString(files[CollectionPaths.Instructions]);
        return [.. ShellBlock().Matches(text).Select(step => step.Groups["commands"].Value)];
    }

    private string Shell(string commands)
    {
        var start = new ProcessStartInfo("/bin/sh", ["-c", commands])
        {
            WorkingDirectory = _folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using var shell = Process.Start(start)!;
        _ = shell.StandardError.ReadToEndAsync();
        var output = shell.StandardOutput.ReadToEnd();
        shell.WaitForExit();
        return output;
    }

    [GeneratedRegex("```sh\n(?<commands>.*?)```", RegexOptions.Singleline)]
    private static partial Regex ShellBlock();
}
