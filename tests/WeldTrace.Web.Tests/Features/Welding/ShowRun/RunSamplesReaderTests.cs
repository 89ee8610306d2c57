using System.Buffers.Binary;
using WeldTrace.TestSupport.Database;
using WeldTrace.Web.Features.Welding.ShowRun;

namespace WeldTrace.Web.Tests.Features.Welding.ShowRun;

public sealed class RunSamplesReaderTests(PostgresServerFixture server)
{
    [Fact]
    public async Task FindAsync_Log_KeepsTheExtremesOfEachChannel()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await shop.EndedAsync();
        Assert.True((await shop.BringAsync(id, SampleLogs.WithExcursion())).IsAccepted);

        var bytes = await new RunSamplesReader(shop.Database).FindAsync(
            id,
            UnitSystem.Metric,
            null,
            null,
            CancellationToken.None
        );

        var (times, columns) = Read(bytes!);
        var force = Column(3);
        Assert.Equal(7, columns.Length);
        Assert.Equal(force.Max(), columns[0].Max(), 3);
        Assert.Equal(force.Min(), columns[0].Min(), 3);
        Assert.Equal(times.Order(), times);
        Assert.InRange(times.Length, 1500, 2000);
    }

    [Fact]
    public async Task FindAsync_Stretch_GivesItsSamplesExactly()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await shop.EndedAsync();
        Assert.True((await shop.BringAsync(id, SampleLogs.WithExcursion())).IsAccepted);
        var (time, force) = (Column(0), Column(3));
        var wanted = time.Index().Where(t => t.Item is >= 10 and <= 12).Select(t => t.Index);
        int[] rows = [.. wanted];

        var bytes = await new RunSamplesReader(shop.Database).FindAsync(
            id,
            UnitSystem.Metric,
            10,
            12,
            CancellationToken.None
        );

        // Each bucket is one sample here, given as its least and greatest.
        var (times, columns) = Read(bytes!);
        Assert.Equal(rows.Select(r => time[r]), times.Where((_, i) => i % 2 == 0));
        Assert.Equal(
            rows.Select(r => (float)force[r]),
            columns[0].Where((_, i) => i % 2 == 0).Select(v => (float)v)
        );
    }

    [Fact]
    public async Task FindAsync_InchSite_GivesPoundsForce()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await shop.EndedAsync();
        Assert.True((await shop.BringAsync(id, SampleLogs.WithExcursion())).IsAccepted);

        var bytes = await new RunSamplesReader(shop.Database).FindAsync(
            id,
            UnitSystem.InchPound,
            null,
            null,
            CancellationToken.None
        );

        var (_, columns) = Read(bytes!);
        Assert.Equal(Column(3).Max() * 1000 / 4.4482216152605, columns[0].Max(), 1);
    }

    [Fact]
    public async Task FindAsync_NoLog_Null()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await shop.EndedAsync();

        var bytes = await new RunSamplesReader(shop.Database).FindAsync(
            id,
            UnitSystem.Metric,
            null,
            null,
            CancellationToken.None
        );

        Assert.Null(bytes);
    }

    private static double[] Column(int index) =>
        [
            .. System
                .Text.Encoding.UTF8.GetString(SampleLogs.WithExcursion())
                .Split('\n', StringSplitOptions.RemoveEmptyEntries)
                .Skip(1)
                .Select(line =>
                    double.Parse(
                        line.Split(',')[index],
                        System.Globalization.CultureInfo.InvariantCulture
                    )
                ),
        ];

    private static (double[] Times, float[][] Columns) Read(byte[] bytes)
    {
        var count = (int)BinaryPrimitives.ReadUInt32LittleEndian(bytes);
        var rows = (int)BinaryPrimitives.ReadUInt32LittleEndian(bytes.AsSpan(4));
        var times = new double[rows];
        Buffer.BlockCopy(bytes, 8, times, 0, 8 * rows);
        var columns = new float[count][];
        for (var i = 0; i < count; i++)
        {
            columns[i] = new float[rows];
            Buffer.BlockCopy(bytes, 8 + (8 * rows) + (4 * rows * i), columns[i], 0, 4 * rows);
        }

        return (times, columns);
    }
}
