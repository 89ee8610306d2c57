using CsCheck;

namespace WeldTrace.Engineering.Tests.Workings;

/// <summary>Whatever finite numbers people type: a computation gives a result or a refusal, never an exception.</summary>
public sealed class HostileInputTests
{
    private static readonly double[] Extremes =
    [
        0,
        -1,
        1e-300,
        1e-29,
        1e-15,
        0.001,
        0.01,
        0.1,
        0.5,
        1,
        2,
        10,
        300,
        1e5,
        1e7,
        1e12,
        1e29,
        1e290,
        -1e290,
        double.Epsilon,
    ];

    public static TheoryData<string> Names => [.. HostileComputations.All.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Compute_AnyFiniteInputs_GivesAResultOrARefusal(string name)
    {
        var (computed, refused) = (0, 0);
        Gen.Int[0, Extremes.Length - 1]
            .Select(i => Extremes[i])
            .Array[6]
            .Sample(
                inputs =>
                {
                    _ = HostileComputations.All[name](inputs)
                        ? Interlocked.Increment(ref refused)
                        : Interlocked.Increment(ref computed);
                },
                iter: 2000
            );
        Assert.True(refused > 0);
    }
}
