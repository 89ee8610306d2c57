using WeldTrace.Documents.Tests.Samples;
using Xunit;

namespace WeldTrace.Documents.Tests.Traveler;

public sealed class TravelerExporterTests
{
    [Fact]
    public void Write_SampleVessel_NumbersItsPages()
    {
        var bytes = WrittenPdf.Bytes(SampleTraveler.Model());
        if (Environment.GetEnvironmentVariable("WELDTRACE_SAMPLE_FOLDER") is { Length: > 0 } folder)
        {
            File.WriteAllBytes(Path.Combine(folder, "traveler.pdf"), bytes);
        }

        var pages = WrittenPdf.Pages(bytes);
        Assert.All(
            pages,
            (text, index) =>
                Assert.Contains(
                    $"page {index + 1} of {pages.Length}",
                    text,
                    StringComparison.Ordinal
                )
        );
    }
}
