using WeldTrace.Documents.Labels;
using WeldTrace.Documents.Tests.Samples;
using Xunit;

namespace WeldTrace.Documents.Tests.Labels;

public sealed class LabelSheetExporterTests
{
    [Fact]
    public void Write_ThirtyLabels_PrintsEachMarkOnceOverTwoPages()
    {
        var model = Model(30);

        var bytes = WrittenPdf.Bytes(model);
        SampleFolder.Keep("labels.pdf", bytes);
        var pages = WrittenPdf.Pages(bytes);

        Assert.Equal(2, pages.Length);
        var text = WrittenPdf.Text(bytes);
        Assert.All(
            model.Labels,
            l => Assert.Equal(2, text.Split(l.Mark, StringSplitOptions.None).Length)
        );
        Assert.Contains("TD-15 rev A", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_NoLabel_SaysSo() =>
        Assert.Contains(
            "No label was chosen.",
            WrittenPdf.Text(WrittenPdf.Bytes(Model(0))),
            StringComparison.Ordinal
        );

    private static LabelSheetModel Model(int count) =>
        new()
        {
            Stamp = SampleTraveler.Stamp,
            Subject = "tools",
            Labels =
            [
                .. Enumerable
                    .Range(1, count)
                    .Select(i => new Label(
                        $"T-{i:0000}",
                        ["tool", "TD-15 rev A"],
                        $"https://weld.example/tools/{i:0000}"
                    )),
            ],
        };
}
