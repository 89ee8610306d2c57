namespace WeldTrace.Engineering.Tests.Workings;

public sealed class WorkingTests
{
    [Theory]
    [InlineData(0.00176666667, 6, "0.00176667")]
    [InlineData(241.1845662, 6, "241.185")]
    [InlineData(1.188351589e-10, 6, "1.18835 × 10⁻¹⁰")]
    [InlineData(224058266.4, 6, "224058000")]
    [InlineData(-0.00002, 3, "-0.00002")]
    [InlineData(0, 3, "0")]
    [InlineData(1234.5, 2, "1200")]
    public void Format_Number_KeepsSignificantDigitsWithoutNeedlessExponent(
        double value,
        int digits,
        string text
    ) => Assert.Equal(text, Figures.Format(value, digits));

    [Theory]
    [InlineData(0)]
    [InlineData(16)]
    public void Format_ImpossibleDigits_Throws(int digits) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Figures.Format(1, digits));

    [Fact]
    public void Build_Parts_StandInTheirOrder()
    {
        var working = Working
            .Of("Weld pitch", "p = v/n")
            .Input("v", "travel speed", 200, "mm/min")
            .OptionalInput("x", "left out", null)
            .Input("n", "spindle speed", 800, "rev/min")
            .Step("", "on the way", 1)
            .Result("p", "weld pitch", 0.25, "mm/rev")
            .From("Definition.")
            .Validity(Validity.Outside("Too slow."))
            .Build();
        Assert.Equal(["v", "n"], working.Inputs.Select(value => value.Symbol));
        Assert.Equal("0.25 mm/rev", Assert.Single(working.Results).Text);
        Assert.Equal("1", Assert.Single(working.Intermediates).Text);
        Assert.Equal("Too slow.", working.Validity.Sentence);
        Assert.False(working.Validity.IsWithin);
    }

    [Fact]
    public void Computed_Refused_KeepsReasonsAndHasNoValue()
    {
        var refusal = new Refusal(
            RefusalReason.OutOfRange,
            "wall",
            "It is too thin.",
            "Take a thicker one."
        );
        var result = Computed.Refused<string>(refusal);
        Assert.True(result.IsRefused);
        Assert.False(result.TryGet(out _));
        Assert.Same(refusal, Assert.Single(result.Refusals));
        Assert.Contains(
            "wall: It is too thin.",
            Assert.Throws<InvalidOperationException>(() => result.Value).Message,
            StringComparison.Ordinal
        );
        Assert.Throws<InvalidOperationException>(() => result.Working);
    }

    [Fact]
    public void Computed_RefusedWithoutReason_Throws() =>
        Assert.Throws<ArgumentException>(() => Computed.Refused<string>());
}
