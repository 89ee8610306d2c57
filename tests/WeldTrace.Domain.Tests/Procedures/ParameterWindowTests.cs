using WeldTrace.Domain.Procedures;
using Xunit;

namespace WeldTrace.Domain.Tests.Procedures;

/// <summary>A value on a limit is within it, as "at least" and "at most" say; a limit is told before a warning.</summary>
public sealed class ParameterWindowTests
{
    private static readonly ParameterWindow Force = new(
        WeldParameter.AxialForce,
        8.0m,
        7.2m,
        8.8m,
        "kN",
        true
    )
    {
        WarningLower = 7.5m,
        WarningUpper = 8.5m,
    };

    [Theory]
    [InlineData(7_500)]
    [InlineData(8_000)]
    [InlineData(8_500)]
    public void PassedBy_WithinTheWarnings_IsNothing(double newtons) =>
        Assert.Null(Force.PassedBy(newtons));

    [Theory]
    [InlineData(7_199, false, false)]
    [InlineData(7_200, false, true)]
    [InlineData(7_499, false, true)]
    [InlineData(8_501, true, true)]
    [InlineData(8_800, true, true)]
    [InlineData(8_801, true, false)]
    public void PassedBy_Beyond_TellsTheLimitBeforeTheWarning(
        double newtons,
        bool isAbove,
        bool isWarning
    ) => Assert.Equal(new PassedLimit(isAbove, isWarning), Force.PassedBy(newtons));

    [Fact]
    public void PassedBy_WithoutWarnings_TellsLimitsOnly()
    {
        var plain = Force with { WarningLower = null, WarningUpper = null };

        Assert.Null(plain.PassedBy(7_300));
        Assert.Equal(new PassedLimit(false, false), plain.PassedBy(7_000));
    }
}
