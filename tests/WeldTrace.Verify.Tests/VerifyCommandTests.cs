using WeldTrace.Domain.Ledger;
using Xunit;

namespace WeldTrace.Verify.Tests;

public sealed class VerifyCommandTests : IDisposable
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
    public async Task Run_GoodBundle_SaysVerifiedAndReturns0()
    {
        Assert.Equal(0, Run(await BundleAsync()));

        Assert.StartsWith("verified", _output.ToString());
        Assert.Contains("NR-0142", _output.ToString());
        Assert.Contains(SampleBundle.Site, _output.ToString());
        Assert.Contains(SampleBundle.Key.Fingerprint, _output.ToString());
        Assert.Contains("Compare the key", _output.ToString());
        Assert.Empty(_error.ToString());
    }

    [Fact]
    public async Task Run_ChangedFile_NamesItAndReturns1()
    {
        Assert.Equal(1, Run(await BundleAsync(files => files["traveler.pdf"][0] ^= 1)));

        Assert.StartsWith("NOT VERIFIED", _output.ToString());
        Assert.Contains("changed traveler.pdf", _output.ToString());
    }

    [Fact]
    public async Task Run_RightFingerprint_SaysSo()
    {
        Assert.Equal(0, Run(await BundleAsync(), "--key", SampleBundle.Key.Fingerprint));

        Assert.Contains("the one that you named", _output.ToString());
    }

    [Fact]
    public async Task Run_RightPemFileBeforeTheBundle_SaysSo()
    {
        var pem = Path.Combine(_folder, "site.pem");
        await File.WriteAllTextAsync(
            pem,
            SampleBundle.Key.PublicKey.Pem,
            TestContext.Current.CancellationToken
        );

        Assert.Equal(0, Run("--key", pem, await BundleAsync()));
    }

    [Fact]
    public async Task Run_WrongFingerprint_Returns1()
    {
        using var other = SiteKey.Create();

        Assert.Equal(1, Run(await BundleAsync(), "--key", other.Fingerprint));
        Assert.Contains("wrong signature site-key.pem", _output.ToString());
    }

    [Theory]
    [InlineData]
    [InlineData("--help")]
    [InlineData("a.zip", "b.zip")]
    [InlineData("a.zip", "--key")]
    [InlineData("a.zip", "--key", "no such file")]
    [InlineData("no such bundle.zip")]
    public void Run_WrongUse_SaysHowAndReturns2(params string[] args)
    {
        Assert.Equal(2, Run(args));

        Assert.Contains("usage:", _error.ToString());
        Assert.Empty(_output.ToString());
    }

    [Fact]
    public void Run_HostileName_IsPrintedHarmlessly()
    {
        var bundle = Path.Combine(_folder, "hostile.zip");
        File.WriteAllBytes(bundle, RawZip.Of(("a\u001b[2J\r\nverified\u202e", [])));

        Assert.Equal(1, Run(bundle));
        Assert.Contains("refused a\\u{1b}[2J\\u{d}\\u{a}verified\\u{202e}", _output.ToString());
    }

    private int Run(params string[] args) => VerifyCommand.Run(args, _output, _error);

    private async Task<string> BundleAsync(Action<BundleFiles>? change = null)
    {
        var files = await BundleFiles.SampleAsync();
        change?.Invoke(files);
        var path = Path.Combine(_folder, "bundle.zip");
        await File.WriteAllBytesAsync(path, files.Pack());
        return path;
    }
}
