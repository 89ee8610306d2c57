using WeldTrace.Documents.Drawings;
using WeldTrace.Documents.Tests.Samples;
using Xunit;

namespace WeldTrace.Documents.Tests.Drawings;

public sealed class AlternativeTextTests
{
    [Fact]
    public void PassDrawing_TwoPasses_NamesSensesAndSides()
    {
        var text = new PassDrawing(SampleJoints.Plan).AlternativeText;

        Assert.Contains(
            "Pass 1: spindle clockwise, travel clockwise, retreating side inside, advancing side outside.",
            text,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "Pass 2: spindle clockwise, travel counter-clockwise",
            text,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void SeamDrawing_Excursion_SaysWhere()
    {
        var seam = SampleRuns.Run("WR-1", "J1", "1", 1).Seam;

        Assert.Contains(
            "1, axial force, from 101 mm to 119 mm of the path",
            new SeamDrawing(seam!).AlternativeText,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void ProcessLogDrawing_Channels_CountsExcursions()
    {
        var text = new ProcessLogDrawing(SampleLog.Plot(1)).AlternativeText;

        Assert.Contains("Axial force, 1 excursion", text, StringComparison.Ordinal);
        Assert.Contains("Travel speed, no excursion", text, StringComparison.Ordinal);
    }

    [Fact]
    public void PressureLadderDrawing_Stages_SaysTargetsAndHolds()
    {
        var chart = SampleTests.Proof().Chart;

        Assert.Contains(
            "proof at 180.0\u00A0bar, held 15 min",
            new PressureLadderDrawing(chart!, UnitSystem.Metric).AlternativeText,
            StringComparison.Ordinal
        );
    }
}
