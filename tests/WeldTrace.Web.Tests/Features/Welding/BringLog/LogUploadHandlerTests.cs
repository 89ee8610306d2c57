using WeldTrace.Domain.Records;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Welding.BringLog;
using WeldTrace.Web.Files;

namespace WeldTrace.Web.Tests.Features.Welding.BringLog;

public sealed class LogUploadHandlerTests(PostgresServerFixture server)
{
    private const long ThreeGigabytes = 3L * 1024 * 1024 * 1024;

    [Fact]
    public async Task HandleAsync_ThreeGigabytesAnnounced_RefusedUnread()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await shop.EndedAsync();
        var content = new EndlessStream();

        var outcome = await BringAsync(shop, id, content, ThreeGigabytes);

        var refusal = Assert.Single(outcome.Refusals);
        Assert.Equal("too-large", refusal.Code);
        Assert.Contains("larger than 2 GB", refusal.Sentence, StringComparison.Ordinal);
        Assert.Equal(0, content.Given);
    }

    [Fact]
    public async Task KeepAsync_LongerThanAllowed_RefusedAndNothingLeft()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var content = new EndlessStream();

        var outcome = await shop.Staged.KeepAsync(
            shop.Vessel.Id,
            "run.csv",
            content,
            1_000_000,
            CancellationToken.None
        );

        Assert.Equal("too-large", Assert.Single(outcome.Refusals).Code);
        Assert.Empty(shop.StagedFiles);
        Assert.InRange(content.Given, 1_000_000, 1_500_000);
    }

    [Fact]
    public async Task KeepAsync_ConnectionLost_NothingLeft()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var content = new EndlessStream { BreaksAfter = 300_000 };

        await Assert.ThrowsAsync<IOException>(() =>
            shop.Staged.KeepAsync(
                shop.Vessel.Id,
                "run.csv",
                content,
                StagedLogs.MostBytes,
                CancellationToken.None
            )
        );

        Assert.Empty(shop.StagedFiles);
    }

    /// <summary>28 is what Linux answers to writing on a full disk (ENOSPC).</summary>
    [Fact]
    public async Task HandleAsync_DiskFull_SaysSoAndNothingLeft()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await shop.EndedAsync();
        var content = new EndlessStream
        {
            BreaksAfter = 300_000,
            Break = new IOException("No space left on device", 28),
        };

        var outcome = await BringAsync(shop, id, content, null);

        Assert.Equal("disk-full", Assert.Single(outcome.Refusals).Code);
        Assert.Empty(shop.StagedFiles);
    }

    [Fact]
    public async Task HandleAsync_SecondFile_TakesThePlaceOfTheFirst()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await shop.EndedAsync();
        var first = await shop.UploadAsync(id, SampleLogs.Good());

        var second = await shop.UploadAsync(id, SampleLogs.Good());

        Assert.Null(await shop.Staged.FindAsync(id, first, CancellationToken.None));
        Assert.NotNull(await shop.Staged.FindAsync(id, second, CancellationToken.None));
    }

    [Theory]
    [InlineData("../../etc/passwd", "passwd")]
    [InlineData(@"C:\logs\run 7.csv", "run 7.csv")]
    [InlineData("run\r\n7.csv", "run7.csv")]
    public async Task HandleAsync_NameWithPath_KeepsTheLastPart(string name, string kept)
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await shop.EndedAsync();

        var upload = await shop.UploadAsync(id, SampleLogs.Good(), name);

        var staged = await shop.Staged.FindAsync(id, upload, CancellationToken.None);
        Assert.Equal(kept, staged!.FileName);
    }

    [Fact]
    public async Task HandleAsync_RunStillRunning_Refused()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await shop.StartedAsync();

        var outcome = await BringAsync(shop, id, new MemoryStream([1]), 1);

        Assert.Equal("state", Assert.Single(outcome.Refusals).Code);
    }

    [Fact]
    public async Task HandleAsync_Auditor_Refused()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await shop.EndedAsync();

        var outcome = await BringAsync(shop, id, new MemoryStream([1]), 1, SamplePeople.Auditor);

        Assert.Equal("role", Assert.Single(outcome.Refusals).Code);
    }

    [Fact]
    public async Task HandleAsync_NoFileChosen_Refused()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await shop.EndedAsync();

        var outcome = await BringAsync(shop, id, Stream.Null, 0, name: "");

        Assert.Equal("no-file", Assert.Single(outcome.Refusals).Code);
    }

    private static Task<Outcome<StagedLog>> BringAsync(
        WeldShop shop,
        Guid id,
        Stream content,
        long? announced,
        Actor? actor = null,
        string name = "run.csv"
    ) =>
        new LogUploadHandler(shop.Database, shop.Staged).HandleAsync(
            id,
            name,
            content,
            announced,
            actor ?? SamplePeople.Operator,
            CancellationToken.None
        );
}
