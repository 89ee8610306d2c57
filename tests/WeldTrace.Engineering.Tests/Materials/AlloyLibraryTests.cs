using WeldTrace.Engineering.Materials;

namespace WeldTrace.Engineering.Tests.Materials;

public sealed class AlloyLibraryTests
{
    [Theory]
    [InlineData("6061", 582, 652)]
    [InlineData("6061-t6", 582, 652)]
    [InlineData("2219-T62", 543, 643)]
    [InlineData(" 7050 ", 524, 635)]
    public void Find_KnownAlloy_GivesTheMeltingRange(
        string designation,
        double solidus,
        double liquidus
    )
    {
        var alloy = AlloyLibrary.Find(designation)!;
        Assert.Equal(solidus, alloy.Solidus!.Value.DegreesCelsius, 1e-9);
        Assert.Equal(liquidus, alloy.Liquidus!.Value.DegreesCelsius, 1e-9);
    }

    [Fact]
    public void Find_AlloyWithoutTrustworthyFigure_GivesNone()
    {
        var alloy = AlloyLibrary.Find("2195")!;
        Assert.Null(alloy.Solidus);
        Assert.Null(alloy.Liquidus);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("9999")]
    public void Find_UnknownAlloy_FindsNothing(string? designation) =>
        Assert.Null(AlloyLibrary.Find(designation));

    [Fact]
    public void All_Entries_HaveSolidusBelowLiquidusAndSources() =>
        Assert.All(
            AlloyLibrary.All.Where(alloy => alloy.Solidus is not null),
            alloy =>
            {
                Assert.True(alloy.Solidus!.Value < alloy.Liquidus!.Value);
                Assert.NotEmpty(alloy.Solidus.Source);
                Assert.NotEmpty(alloy.Liquidus.Source);
            }
        );

    /// <summary>Diffusivity of a_process.csv, A6.5.</summary>
    [Fact]
    public void Thermal_6061T6_HasTheDiffusivityOfTheChecks()
    {
        var thermal = AlloyLibrary.Find("6061-T6")!.Thermal!;
        Assert.Equal(6.903108466e-5, thermal.Material.SquareMetresPerSecond, 1e-13);
        Assert.Equal(Evidence.FromMemory, thermal.HeatCapacity.Evidence);
        Assert.Equal(120, AlloyLibrary.Find("2219-T87")!.Thermal!.Conductivity.Value);
        Assert.Null(AlloyLibrary.Find("2195")!.Thermal);
    }

    [Fact]
    public void All_Designations_AreDifferent() =>
        Assert.Equal(
            AlloyLibrary.All.Count,
            AlloyLibrary.All.DistinctBy(alloy => alloy.Designation).Count()
        );
}
