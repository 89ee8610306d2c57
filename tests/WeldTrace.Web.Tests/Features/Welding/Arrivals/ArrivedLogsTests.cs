using System.Security.Cryptography;
using System.Text;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using WeldTrace.TestSupport.Database;
using WeldTrace.Web.Features.Welding;
using WeldTrace.Web.Features.Welding.Arrivals;

namespace WeldTrace.Web.Tests.Features.Welding.Arrivals;

public sealed class ArrivedLogsTests(PostgresServerFixture server)
{
    private static readonly byte[] Bytes = Encoding.UTF8.GetBytes(
        string.Concat(Enumerable.Range(0, 5000).Select(i => $"{i},{i % 7}\n"))
    );

    private static readonly string Hash = Convert.ToHexStringLower(SHA256.HashData(Bytes));

    [Fact]
    public async Task AppendAsync_BrokenPiece_GoesOnFromTheLastWholeOne()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var arrival = await BeginAsync(shop, Bytes.Length, Hash);
        await KeptAsync(shop, arrival, 0, Bytes[..4000]);
        using var breaking = new BreakingStream(new byte[2000]);

        await Assert.ThrowsAsync<IOException>(() =>
            shop.Arrivals.AppendAsync(arrival, 4000, breaking, CancellationToken.None)
        );

        // As after a restart: another instance, and the same announcement again.
        var again = await new ArrivedLogs(shop.Configuration, shop.Clock).BeginAsync(
            shop.Machine.Id,
            "run.csv",
            Bytes.Length,
            Hash,
            CancellationToken.None
        );
        Assert.Equal((arrival.Id, 4000), (again.Id, shop.Arrivals.OffsetOf(again)));
        await KeptAsync(shop, again, 4000, Bytes[4000..]);
        var whole = Assert.Single(shop.Arrivals.WholeOf(shop.Machine.Id));
        await using var kept = shop.Arrivals.Open(whole);
        Assert.Equal(
            Hash,
            Convert.ToHexStringLower(
                await SHA256.HashDataAsync(kept, TestContext.Current.CancellationToken)
            )
        );
    }

    [Theory]
    [InlineData(3999)]
    [InlineData(4001)]
    [InlineData(0)]
    public async Task AppendAsync_AtAnotherPlace_TellsTheRightOne(long from)
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var arrival = await BeginAsync(shop, Bytes.Length, Hash);
        await KeptAsync(shop, arrival, 0, Bytes[..4000]);

        var result = await AppendAsync(shop, arrival, from, Bytes[4000..]);

        Assert.Equal(new PieceResult.Misplaced(4000), result);
        Assert.Equal(4000, shop.Arrivals.OffsetOf(arrival));
    }

    [Fact]
    public async Task AppendAsync_MoreThanAnnounced_KeepsNothingOfIt()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var arrival = await BeginAsync(shop, 100, Hash);

        Assert.IsType<PieceResult.Misplaced>(await AppendAsync(shop, arrival, 0, Bytes));
        Assert.Equal(0, shop.Arrivals.OffsetOf(arrival));
    }

    [Fact]
    public async Task AppendAsync_OtherBytesThanAnnounced_AreThrownAway()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var arrival = await BeginAsync(shop, Bytes.Length, new string('a', 64));

        Assert.IsType<PieceResult.Damaged>(await AppendAsync(shop, arrival, 0, Bytes));
        Assert.Empty(shop.Arrivals.WholeOf(shop.Machine.Id));
        Assert.Null(shop.Arrivals.Find(shop.Machine.Id, arrival.Id));
    }

    [Fact]
    public async Task Find_OfAnotherMachine_IsNotThere()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var arrival = await BeginAsync(shop, Bytes.Length, Hash);
        Assert.Null(shop.Arrivals.Find(Guid.CreateVersion7(), arrival.Id));
    }

    [Fact]
    public async Task LookAsync_FileInTheFolderOfTheMachine_IsTakenOnceItRests()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        using var folder = new TestFolder();
        var own = Directory.CreateDirectory(Path.Combine(folder.Path, shop.Machine.Name)).FullName;
        await File.WriteAllBytesAsync(
            Path.Combine(own, "run 1.csv"),
            Bytes[..100],
            TestContext.Current.CancellationToken
        );
        using var watched = new WatchedFolderReader(
            new ConfigurationBuilder()
                .AddInMemoryCollection([new("Logs:WatchedFolder", folder.Path)])
                .Build(),
            shop.Arrivals,
            new ServiceCollection().BuildServiceProvider(),
            NullLogger<WatchedFolderReader>.Instance
        );

        Assert.Equal(0, await watched.LookAsync(shop.Database, CancellationToken.None));
        await File.WriteAllBytesAsync(
            Path.Combine(own, "run 1.csv"),
            Bytes,
            TestContext.Current.CancellationToken
        );
        Assert.Equal(0, await watched.LookAsync(shop.Database, CancellationToken.None));
        Assert.Equal(1, await watched.LookAsync(shop.Database, CancellationToken.None));

        var whole = Assert.Single(shop.Arrivals.WholeOf(shop.Machine.Id));
        Assert.Equal(("run 1.csv", Hash), (whole.FileName, whole.Sha256));
        Assert.True(File.Exists(Path.Combine(own, "taken", "run 1.csv")));
        Assert.False(File.Exists(Path.Combine(own, "run 1.csv")));
    }

    private static Task<ArrivedLog> BeginAsync(WeldShop shop, long length, string hash) =>
        shop.Arrivals.BeginAsync(shop.Machine.Id, "run.csv", length, hash, CancellationToken.None);

    private static Task<PieceResult> AppendAsync(
        WeldShop shop,
        ArrivedLog arrival,
        long from,
        byte[] piece
    ) => shop.Arrivals.AppendAsync(arrival, from, new MemoryStream(piece), CancellationToken.None);

    private static async Task KeptAsync(
        WeldShop shop,
        ArrivedLog arrival,
        long from,
        byte[] piece
    ) =>
        Assert.Equal(
            new PieceResult.Kept(from + piece.Length),
            await AppendAsync(shop, arrival, from, piece)
        );

    /// <summary>A connection that breaks after some bytes.</summary>
    private sealed class BreakingStream(byte[] bytes) : MemoryStream(bytes)
    {
        public override async ValueTask<int> ReadAsync(
            Memory<byte> buffer,
            CancellationToken cancellationToken = default
        ) =>
            await base.ReadAsync(buffer, cancellationToken) is > 0 and var read
                ? read
                : throw new IOException("The connection broke.");
    }
}
