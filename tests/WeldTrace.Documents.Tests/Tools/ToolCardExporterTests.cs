using WeldTrace.Documents.Drawings;
using WeldTrace.Documents.Tests.Samples;
using WeldTrace.Documents.Tools;
using WeldTrace.Engineering.Quantities;
using Xunit;

namespace WeldTrace.Documents.Tests.Tools;

public sealed class ToolCardExporterTests
{
    private static readonly byte[] Sample = WrittenPdf.Bytes(SampleTool.Model());

    [Fact]
    public void Write_ToolInService_PrintsUsesAndInspections()
    {
        SampleFolder.Keep("tool.pdf", Sample);
        var text = WrittenPdf.Text(Sample);

        Assert.Contains("26.88 m used, 13.12 m left", text, StringComparison.Ordinal);
        Assert.Contains("limit 40.00 m", text, StringComparison.Ordinal);
        Assert.Contains("WR-0880", text, StringComparison.Ordinal);
        Assert.Contains("Pin diameter: 5.98 mm", text, StringComparison.Ordinal);
        Assert.Contains("Run was welded with T-102.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_LongUseTable_RepeatsItsHeadingRow()
    {
        var withUses = WrittenPdf
            .Pages(Sample)
            .Where(page => page.Contains("WR-0", StringComparison.Ordinal))
            .ToList();

        Assert.True(withUses.Count > 1, "The table fits on one page.");
        Assert.All(
            withUses,
            page => Assert.Contains("Total after", page, StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Write_RetiredTool_SaysNotToUseIt()
    {
        var retirement = new ToolRetirement(
            "pin cracked",
            "Inês Falcão",
            SampleTraveler.At(19, 9, 0)
        );

        var text = WrittenPdf.Text(
            WrittenPdf.Bytes(SampleTool.Model() with { Retirement = retirement })
        );

        Assert.Contains("Not to be used", text, StringComparison.Ordinal);
        Assert.Contains(
            "Retired 2031-05-19 09:00 by Inês Falcão: pin cracked.",
            text,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Write_WearAndFailures_DrawsBothWithTheirKeys()
    {
        var model = SampleTool.Model() with
        {
            Wear = SampleTool.Wear(UnitSystem.Metric),
            Failures = SampleTool.Failures(UnitSystem.Metric),
        };
        var bytes = WrittenPdf.Bytes(model);
        SampleFolder.Keep("tool-plots.pdf", bytes);

        var text = WrittenPdf.Text(bytes);

        Assert.Contains("Wear of the pin", text, StringComparison.Ordinal);
        Assert.Contains("least length", text, StringComparison.Ordinal);
        Assert.Contains("failed, %", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_UnusedTool_SaysSo()
    {
        var model = SampleTool.Model() with
        {
            Uses = [],
            Inspections = [],
            Life = new ToolLife(Length.Zero, Length.FromMetres(40)),
        };

        var text = WrittenPdf.Text(WrittenPdf.Bytes(model));

        Assert.Contains("The tool has not been used yet.", text, StringComparison.Ordinal);
        Assert.Contains("0.00 m used, 40.00 m left", text, StringComparison.Ordinal);
    }

    [Fact]
    public void AlternativeText_ToolPastItsLimit_SaysByHowMuch()
    {
        var life = new ToolLife(Length.FromMetres(41.5), Length.FromMetres(40));

        var text = new LifeBarDrawing(life, [], UnitSystem.Metric).AlternativeText;

        Assert.Contains("1.50\u00A0m past the limit", text, StringComparison.Ordinal);
    }
}
