using System.Text;
using WeldTrace.Web.Demo;

namespace WeldTrace.ProcessLogs.Tests;

public sealed class SizeTests
{
    private const long ThreeGigabytes = 3L * 1024 * 1024 * 1024;

    [Fact]
    public async Task ReadAsync_ThreeGigabytesOfKnownLength_IsRefusedUnread()
    {
        using var stream = new EndlessStream(canSeek: true, ThreeGigabytes);
        var result = await ProcessLogReader.ReadAsync(
            stream,
            SmallLog.Mapping,
            null,
            SmallLog.Cancellation
        );

        Assert.Equal(LogProblemCode.TooLarge, Assert.Single(result.Problems).Code);
        Assert.Contains("2 GB", result.Problems[0].Sentence, StringComparison.Ordinal);
        Assert.Equal(0, stream.BytesRead);
    }

    [Fact]
    public async Task ReadAsync_UploadOfUnknownLength_StopsAtTheLimit()
    {
        using var stream = new EndlessStream(canSeek: false, ThreeGigabytes);
        var options = new LogReadOptions { LengthLimitBytes = 5_000_000 };
        var result = await ProcessLogReader.ReadAsync(
            stream,
            SmallLog.Mapping,
            options,
            SmallLog.Cancellation
        );

        Assert.Equal([LogProblemCode.TooLarge], result.Problems.Select(problem => problem.Code));
        Assert.InRange(stream.BytesRead, 5_000_000, 5_300_000);
    }

    [Fact]
    public async Task ReadAsync_Cancelled_Stops()
    {
        using var cancelled = new CancellationTokenSource();
        using var stream = new EndlessStream(canSeek: false, ThreeGigabytes);
        cancelled.CancelAfter(TimeSpan.FromMilliseconds(50));
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() =>
            ProcessLogReader.ReadAsync(stream, SmallLog.Mapping, null, cancelled.Token)
        );
    }

    [Fact]
    public async Task ReadAsync_LongLog_AllocatesFarLessThanTheFile()
    {
        var text = new DemoLog(new DemoRun { SamplesPerSecond = 400 }).ToCsv();
        var bytes = Encoding.UTF8.GetBytes(text);
        var guess = (
            await LogPreview.ReadAsync(new MemoryStream(bytes), null, SmallLog.Cancellation)
        )
            .Preview!
            .Guess;

        var before = GC.GetAllocatedBytesForCurrentThread();
        var result = ProcessLogReader.ReadAsync(
            new MemoryStream(bytes),
            guess,
            null,
            SmallLog.Cancellation
        );
        var allocated = GC.GetAllocatedBytesForCurrentThread() - before;

        Assert.True(result.IsCompletedSuccessfully);
        Assert.InRange(allocated, 1, (long)(0.8 * bytes.Length));
        Assert.InRange(
            (await result).Log!.Chunks.Sum(chunk => chunk.Bytes.Length),
            1,
            bytes.Length / 4
        );
    }
}
