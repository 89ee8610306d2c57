using System.Globalization;
using Xunit;

namespace WeldTrace.Verify.Tests;

/// <summary>
/// Bundles with bytes changed, cut out, doubled and put elsewhere at random: the reader never throws, and never calls one
/// good whose files are not the old ones. WELDTRACE_FUZZ_BUNDLES says how many; a nightly run takes 1,000,000.
/// </summary>
public sealed class BundleFuzzTests(ITestOutputHelper output)
{
    private const string Variable = "WELDTRACE_FUZZ_BUNDLES";
    private const int UsualCount = 20_000;
    private const int Seed = 20_260_302;

    private static int Count =>
        int.TryParse(
            Environment.GetEnvironmentVariable(Variable),
            NumberStyles.None,
            CultureInfo.InvariantCulture,
            out var count
        )
            ? count
            : UsualCount;

    [Fact]
    public async Task Verify_BundlesChangedAtRandom_NeverThrowsAndNeverHidesAChange()
    {
        var zip = await SampleBundle.WriteAsync(SampleBundle.Input());
        var files = BundleFiles.Unpack(zip);
        var refused = 0;

        // Each bundle has a seed of its own, so that one that fails is made again from its number.
        Parallel.For(
            0,
            Count,
            number =>
            {
                var changed = Change(zip, new Random(Seed + number));
                var report = BundleVerifier.Verify(new MemoryStream(changed));
                if (!report.IsVerified)
                {
                    Assert.NotEmpty(report.Problems);
                    Interlocked.Increment(ref refused);
                    return;
                }

                var now = BundleFiles.Unpack(changed);
                Assert.Equal(files.Keys, now.Keys);
                Assert.All(files, file => Assert.Equal(file.Value, now[file.Key]));
            }
        );

        output.WriteLine($"{Count} bundles, {refused} found wrong.");
        Assert.InRange(refused, Count / 2, Count);
    }

    private static byte[] Change(byte[] zip, Random random)
    {
        var bytes = zip.ToList();
        for (var left = random.Next(1, 5); left > 0 && bytes.Count > 0; left--)
        {
            var at = random.Next(bytes.Count);
            var length = Math.Min(random.Next(1, 40), bytes.Count - at);
            switch (random.Next(5))
            {
                case 0:
                    bytes[at] ^= (byte)(1 << random.Next(8));
                    break;
                case 1:
                    bytes[at] = (byte)random.Next(256);
                    break;
                case 2:
                    bytes.RemoveRange(at, length);
                    break;
                case 3:
                    bytes.InsertRange(at, bytes.GetRange(at, length));
                    break;
                default:
                    var part = bytes.GetRange(at, length);
                    bytes.RemoveRange(at, length);
                    bytes.InsertRange(random.Next(bytes.Count + 1), part);
                    break;
            }
        }

        return [.. bytes];
    }
}
