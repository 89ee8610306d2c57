using CsCheck;
using WeldTrace.Engineering.Units;

namespace WeldTrace.Engineering.Tests.Units;

public sealed class UnitCatalogueTests
{
    [Fact]
    public void Convert_ThereAndBack_GivesTheSameNumber()
    {
        var pairs = UnitCatalogue
            .All.SelectMany(from => UnitCatalogue.Of(from.Dimension).Select(to => (from, to)))
            .ToArray();
        Gen.Select(Gen.Int[0, pairs.Length - 1], Gen.Double[-1e6, 1e6])
            .Sample(
                (index, value) =>
                {
                    var (from, to) = pairs[index];
                    var back = to.To(from, from.To(to, value));
                    var scale = Math.Max(
                        Math.Abs(value),
                        Math.Abs(to.Offset * to.Factor / from.Factor) + 460
                    );
                    Assert.InRange(Math.Abs(back - value), 0, 1e-12 * scale);
                }
            );
    }

    [Fact]
    public void To_OtherKind_Throws() =>
        Assert.Throws<ArgumentException>(() => UnitCatalogue.Convert(1, "bar", "mm"));

    [Theory]
    [InlineData("Nm", "N·m")]
    [InlineData(" degC ", "°C")]
    [InlineData("IPM", "in/min")]
    [InlineData("rpm", "rev/min")]
    public void TryFind_UsualSpelling_FindsTheUnit(string spelling, string symbol)
    {
        Assert.True(UnitCatalogue.TryFind(spelling, out var unit));
        Assert.Equal(symbol, unit.Symbol);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("furlong")]
    [InlineData("mpa")]
    public void TryFind_UnknownUnit_FindsNothing(string? symbol) =>
        Assert.False(UnitCatalogue.TryFind(symbol, out _));

    [Fact]
    public void Get_SymbolOfEachUnit_FindsThatUnit() =>
        Assert.All(UnitCatalogue.All, unit => Assert.Same(unit, UnitCatalogue.Get(unit.Symbol)));
}
