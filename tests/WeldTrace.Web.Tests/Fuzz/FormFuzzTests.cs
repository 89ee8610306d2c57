using System.Collections.Concurrent;
using System.Globalization;
using Microsoft.Extensions.DependencyInjection;
using WeldTrace.TestSupport.Database;
using WeldTrace.Web.Tests.CodeRules;
using WeldTrace.Web.Tests.Features;

namespace WeldTrace.Web.Tests.Fuzz;

/// <summary>
/// Forms filled with hostile values, given to all that reads forms, up to where the database is asked: nothing throws, and what is refused
/// is told in a sentence. WELDTRACE_FUZZ_FORMS says how many; a nightly run takes 1,000,000. What is sent to the running site with its
/// database is in FormAccessTests.
/// </summary>
public sealed class FormFuzzTests(ITestOutputHelper output)
{
    private const string Variable = "WELDTRACE_FUZZ_FORMS";
    private const int UsualCount = 100_000;
    private const int Seed = 20_261_127;
    private const int MostTold = 10;

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
    public async Task EveryReaderOfAForm_GivenHostileValues_NeitherThrowsNorRefusesWithoutAReason()
    {
        using TestFolder folder = new();
        Directory.CreateDirectory(folder.Path);
        await using var services = ProgramServices.Make(
            new NoDatabase(),
            TimeProvider.System,
            folder.Path
        );
        ConcurrentDictionary<string, string> wrong = new(StringComparer.Ordinal);
        ConcurrentDictionary<string, int> tried = new(StringComparer.Ordinal);

        // Each form has a seed of its own, so that one that fails is made again from its number.
        await Parallel.ForAsync(
            0,
            Count,
            TestContext.Current.CancellationToken,
            async (number, _) =>
            {
                await using var scope = services.CreateAsyncScope();
                var target = FormTarget.All[number % FormTarget.All.Count];
                tried.AddOrUpdate(target.Name, 1, (_, so) => so + 1);
                if (
                    await target.TryAsync(scope.ServiceProvider, new Random(Seed + number)) is
                    { } fault
                )
                {
                    wrong.TryAdd(target.Name, $"form {number}: {fault}");
                }
            }
        );

        output.WriteLine(
            $"{Count} forms to {FormTarget.All.Count} readers, seed {Seed}; {wrong.Count} readers failed."
        );
        SourceTree.AssertNone(
            wrong.Values.Take(MostTold),
            "Forms that were not read as they should:"
        );
        Assert.InRange(tried.Count, FormTarget.Forms.Count / 2, FormTarget.All.Count);
    }
}
