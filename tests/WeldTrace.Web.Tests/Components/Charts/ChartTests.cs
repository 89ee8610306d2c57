using System.Buffers.Binary;
using System.Text.Json;
using Bunit;
using WeldTrace.Web.Components.Charts;

namespace WeldTrace.Web.Tests.Components.Charts;

public sealed class ChartTests : ComponentTest
{
    [Fact]
    public void ChartColumns_Write_PutsCountsThenTimesThenValues()
    {
        var bytes = ChartColumns.Write([0.0, 0.5], [1.5, double.NaN], [3.0, 4.0]);

        Assert.Equal(8 + (2 * 8) + (4 * 4), bytes.Length);
        Assert.Equal(2u, BinaryPrimitives.ReadUInt32LittleEndian(bytes));
        Assert.Equal(2u, BinaryPrimitives.ReadUInt32LittleEndian(bytes.AsSpan(4)));
        Assert.Equal(0.5, BinaryPrimitives.ReadDoubleLittleEndian(bytes.AsSpan(16)));
        Assert.Equal(1.5f, BinaryPrimitives.ReadSingleLittleEndian(bytes.AsSpan(24)));
        Assert.True(float.IsNaN(BinaryPrimitives.ReadSingleLittleEndian(bytes.AsSpan(28))));
        Assert.Equal(4f, BinaryPrimitives.ReadSingleLittleEndian(bytes.AsSpan(36)));
    }

    [Fact]
    public void ChartColumns_UnequalColumns_Throws() =>
        Assert.Throws<ArgumentException>(() => ChartColumns.Write([0.0, 1.0], [1.0]));

    [Fact]
    public void RunChart_Render_HasNameDataAndTableForEveryone()
    {
        var page = Render<RunChart>(p =>
            p.Add(c => c.Source, "/runs/1/samples")
                .Add(c => c.Label, "Axial force over 180 s, at most 13.5 kN.")
                .Add(c => c.Series, [new ChartSeries("axial force", "kN", 10.5, 13)])
                .Add(c => c.Bands, [new ChartBand("1", 92, 97)])
                .Add(c => c.Table, "<table></table>")
                .Add(c => c.CsvHref, "/runs/1/samples.csv")
        );

        var plot = page.Find("[role=img]");
        Assert.Equal("Axial force over 180 s, at most 13.5 kN.", plot.GetAttribute("aria-label"));
        Assert.Equal("/runs/1/samples", plot.GetAttribute("data-chart"));
        using var series = JsonDocument.Parse(plot.GetAttribute("data-series")!);
        Assert.Equal(13, series.RootElement[0].GetProperty("upperInUnit").GetDouble());
        Assert.NotNull(page.Find("details table"));
        Assert.Equal("/runs/1/samples.csv", page.Find("a[download]").GetAttribute("href"));
    }
}
