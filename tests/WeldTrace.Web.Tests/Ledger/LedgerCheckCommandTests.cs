using WeldTrace.Web.Features.LedgerView.Check;
using WeldTrace.Web.Tests.Access;

namespace WeldTrace.Web.Tests.Ledger;

/// <summary>The check from a terminal, beside the site that runs on the same data folder.</summary>
[Collection(typeof(SecondDemoSiteGroup))]
public sealed class LedgerCheckCommandTests(DemoSite site)
{
    [Fact]
    public async Task Run_BesideARunningSite_SaysThatNothingWasChanged()
    {
        var (status, said) = await RunAsync();

        Assert.EndsWith("nothing was changed", said, StringComparison.Ordinal);
        Assert.Equal(0, status);
        Assert.Contains("reading records", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_AfterAForgery_NamesIt()
    {
        await using var forger = await Forger.OpenAsync(site);
        await forger.KeepAsync("people");
        await forger.RunAsync(
            "UPDATE people SET printed_name = 'Somebody Else' WHERE sign_in_name = 'operator'"
        );

        var (status, said) = await RunAsync();

        Assert.Equal(1, status);
        Assert.Contains("Somebody Else differs from ledger entry", said, StringComparison.Ordinal);
    }

    private async Task<(int Status, string Said)> RunAsync()
    {
        await using var output = new StringWriter();
        var status = await LedgerCheckCommand.RunAsync(
            [$"--Database:Folder={site.Folder}"],
            output
        );
        return (status, output.ToString().Trim());
    }
}
