using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence.LedgerStore;
using WeldTrace.ProcessLogs;
using WeldTrace.TestSupport.Database;

namespace WeldTrace.Web.Tests.Features.Welding.ReadLog;

/// <summary>A file that its samples don't give back is kept beside them, a large one packed; the sizes are made small here.</summary>
public sealed class LargeOriginalTests(PostgresServerFixture server)
{
    [Theory]
    [InlineData(1_000_000, true)]
    [InlineData(100, false)]
    public async Task HandleAsync_LargeFileThatSamplesDoNotGiveBack_IsKeptPacked(
        long mostPacked,
        bool isKept
    )
    {
        await using var shop = await WeldShop.OpenAsync(server);
        shop.MostPlainBytes = 1000;
        shop.MostPackedBytes = mostPacked;
        var id = await shop.EndedAsync();
        var file = SampleLogs.Good();

        var result = await shop.BringAsync(
            id,
            file,
            edit: form => form.Columns[11].Channel = nameof(LogChannel.Ignored)
        );

        Assert.Equal(isKept, result.IsAccepted);
        var kept = await shop.Database.ReadAsync(db =>
            db.Attachments.Where(a => a.MediaType == "application/zstd").ToListAsync()
        );
        if (!isKept)
        {
            Assert.Empty(kept);
            Assert.Null((await shop.RunAsync(id)).Log);
            return;
        }

        var packed = Assert.Single(kept);
        Assert.InRange(packed.Length, 1, file.Length / 3);
        using var unpacked = new MemoryStream();
        await PackedOriginal
            .Unpack(new MemoryStream(packed.Bytes))
            .CopyToAsync(unpacked, TestContext.Current.CancellationToken);
        Assert.Equal(file, unpacked.ToArray());
        Assert.Empty(
            (
                await shop.Database.ReadAsync(db => db.CheckLedgerAsync(CancellationToken.None))
            ).Problems
        );
    }
}
