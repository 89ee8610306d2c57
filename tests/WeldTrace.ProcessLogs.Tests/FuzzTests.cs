using System.Text;
using CsCheck;

namespace WeldTrace.ProcessLogs.Tests;

/// <summary>Mutated files: never an exception, never endless, either a whole log or reasons.</summary>
/// <remarks>WELDTRACE_FUZZED_FILES sets how many files; continuous integration asks for 200,000.</remarks>
public sealed class FuzzTests
{
    private static readonly int Files = int.Parse(
        Environment.GetEnvironmentVariable("WELDTRACE_FUZZED_FILES") ?? "9000",
        System.Globalization.CultureInfo.InvariantCulture
    );

    private static readonly byte[] Interesting = Encoding.Latin1.GetBytes(
        "\0\n\r\t ,;|\"'.-+eE09aNI#%\u00B0\u00FF\u00FE\u00EF\u00BB\u00BF"
    );

    private static readonly byte[][] Seeds =
    [
        Encoding.UTF8.GetBytes(new SmallLog().Text),
        Encoding.UTF8.GetBytes(
            new SmallLog()
                .Text.Replace(',', ';')
                .Replace('.', ',')
                .Replace("\n", "\r\n", StringComparison.Ordinal)
        ),
        [.. Encoding.Unicode.GetPreamble(), .. Encoding.Unicode.GetBytes(new SmallLog().Text)],
        Encoding.UTF8.GetBytes(
            new SmallLog()
                .WithLine(4, "0.2,\"8.1\",2e2,-3.0040")
                .Text.Replace("t [s],", "# note\nt [s],", StringComparison.Ordinal)
        ),
    ];

    private static readonly Gen<byte[]> Mutated =
        from seed in Gen.Int[0, Seeds.Length - 1].Select(i => Seeds[i])
        from edits in Gen.Select(
            Gen.Int[-2, 3],
            Gen.Int[0, 5000],
            Gen.Int[0, 60],
            Gen.OneOf(
                Gen.Int[0, Interesting.Length - 1].Select(i => Interesting[i]),
                Gen.Byte,
                Gen.Byte[(byte)'0', (byte)'9']
            )
        ).Array[1, 4]
        select edits.Aggregate(seed, Edit);

    [Fact]
    public async Task ReadAsync_MutatedFile_GivesAWholeLogOrReasons()
    {
        var (logs, refusals) = (0, 0);
        await Mutated.SampleAsync(
            async bytes =>
            {
                var result = await SmallLog.ReadAsync(bytes);
                if (result.Log is { } log)
                {
                    Assert.Empty(result.Problems);
                    await CheckAsync(log, bytes);
                    Interlocked.Increment(ref logs);
                }
                else
                {
                    Assert.InRange(result.Problems.Count, 1, 20);
                    Assert.All(
                        result.Problems,
                        problem =>
                            Assert.True(problem.Sentence.Length > 0 && problem.Remedy.Length > 0)
                    );
                    Interlocked.Increment(ref refusals);
                }
            },
            iter: Files * 2 / 3
        );

        Assert.True(
            logs > 300 && refusals > 300,
            $"{logs} logs and {refusals} refusals: the mutations are not telling."
        );
    }

    [Fact]
    public async Task Preview_MutatedFile_GivesAPreviewWhoseGuessCanBeJudged() =>
        await Mutated.SampleAsync(
            async bytes =>
            {
                var result = await LogPreview.ReadAsync(
                    new MemoryStream(bytes),
                    null,
                    CancellationToken.None
                );
                if (result.Preview is not { } preview)
                {
                    Assert.NotEmpty(result.Problems);
                    return;
                }

                var read = await SmallLog.ReadAsync(bytes, preview.Guess);
                Assert.NotEqual(read.Log is null, read.Problems.Count == 0);
                if (read.Log is { } log)
                {
                    Assert.NotNull(LogEvaluation.Evaluate(log, new EvaluationPlan()));
                }
            },
            iter: Files / 3
        );

    private static async Task CheckAsync(ProcessLog log, byte[] original)
    {
        using var copy = new MemoryStream();
        var sha256 = await ProcessLogExport.WriteCsvAsync(log, copy, CancellationToken.None);
        Assert.Equal(log.Header.CsvSha256, sha256);
        Assert.Equal(log.Header.CsvIsOriginal, original.AsSpan().SequenceEqual(copy.ToArray()));
        Assert.Equal(
            log.Header.SampleCount,
            log.Chunks.Where(chunk => chunk.Ordinal == 0).Sum(chunk => chunk.Count)
        );
        var evaluation = LogEvaluation.Evaluate(
            log,
            new EvaluationPlan { Windows = [new(LogChannel.AxialForce, 8000, 8200, "N")] }
        );
        Assert.Equal(log.Header.SampleCount, evaluation.Phases.Sum(span => span.SampleCount));
    }

    private static byte[] Edit(byte[] bytes, (int Kind, int Place, int Length, byte Value) edit)
    {
        var at = edit.Place % (bytes.Length + 1);
        var end = Math.Min(bytes.Length, at + edit.Length);
        return edit.Kind switch
        {
            <= 0 => [.. bytes[..at], edit.Value, .. bytes[Math.Min(bytes.Length, at + 1)..]],
            1 => [.. bytes[..at], edit.Value, .. bytes[at..]],
            2 => [.. bytes[..at], .. bytes[end..]],
            _ => [.. bytes[..end], .. bytes[at..]],
        };
    }
}
