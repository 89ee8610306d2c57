using System.Globalization;
using WeldTrace.TestSupport.Database;
using WeldTrace.Web.Features.LedgerView.Check;
using WeldTrace.Web.Tests.Access;

namespace WeldTrace.Web.Tests.Ledger;

/// <summary>What an administrator does after a machine was lost: the last backup into an empty folder, then the check of the whole ledger.</summary>
[Collection(typeof(DemoSiteGroup))]
public sealed class RestoredSiteTests(DemoSite site)
{
    [Fact]
    public async Task Site_RestoredFromTheBackupOfARunningOne_IsWhole()
    {
        using var backups = new TestFolder();
        using var restored = new TestFolder();
        var backup = Path.Combine(Directory.CreateDirectory(backups.Path).FullName, "saved.tar.gz");
        await Script.RunAsync("backup.sh", "--data", site.Folder, "--to", backup);
        await Script.RunAsync("restore.sh", "--from", backup, "--data", restored.Path);

        var (status, said) = await CheckAsync(restored.Path);

        Assert.EndsWith("nothing was changed", said, StringComparison.Ordinal);
        Assert.Equal(0, status);
        var entries = await site.LedgerSizeAsync();
        Assert.Contains(
            string.Create(CultureInfo.InvariantCulture, $"{entries} entries and "),
            said,
            StringComparison.Ordinal
        );
        Assert.Equal(await KeyAsync(site.Folder), await KeyAsync(restored.Path));
    }

    private static async Task<(int Status, string Said)> CheckAsync(string folder)
    {
        await using var output = new StringWriter();
        var status = await LedgerCheckCommand.RunAsync([$"--Database:Folder={folder}"], output);
        return (status, output.ToString().Trim());
    }

    // The site goes on signing with the key that earlier checkpoints and bundles are verified by.
    private static Task<string> KeyAsync(string folder) =>
        File.ReadAllTextAsync(
            Path.Combine(folder, "site-key-private.pem"),
            TestContext.Current.CancellationToken
        );
}
