using WeldTrace.Domain.Procedures;
using Xunit;

namespace WeldTrace.Domain.Tests.Procedures;

public sealed class PhaseLimitsTests
{
    [Fact]
    public void Read_WhatText_Writes_GivesTheSame()
    {
        PhaseLimits[] limits = [new("plunge", 0, 12.5m), new("exit", -1, 12)];

        Assert.Equal(limits, PhaseLimits.Read(PhaseLimits.Text(limits)));
    }

    [Theory]
    [InlineData("traverse 1 to 2")]
    [InlineData("dwell 1 2")]
    [InlineData("dwell one to 2")]
    [InlineData("dwell 1 to 2; dwell 3 to 4")]
    public void Read_WhatNobodyCanMean_GivesNothing(string text) =>
        Assert.Null(PhaseLimits.Read(text));
}
