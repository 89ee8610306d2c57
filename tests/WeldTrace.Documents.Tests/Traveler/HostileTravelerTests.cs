using UglyToad.PdfPig;
using WeldTrace.Documents.Drawings;
using WeldTrace.Documents.Tests.Samples;
using WeldTrace.Documents.Traveler;
using WeldTrace.Engineering.Quantities;
using Xunit;

namespace WeldTrace.Documents.Tests.Traveler;

public sealed class HostileTravelerTests
{
    [Fact]
    public void Write_OnlyWhatIsRequired_SaysThatNothingIsThereYet()
    {
        var model = SampleTraveler.Model();
        var bare = new TravelerModel
        {
            Stamp = model.Stamp,
            RecordAddress = model.RecordAddress,
            Vessel = new VesselIdentity
            {
                Serial = "NR-0500",
                Design = "Reservoir",
                DesignRevision = "A",
                State = new StateMark("planned", MarkShape.Ring),
            },
        };

        var text = WrittenPdf.Text(bare);

        Assert.Contains("page 1 of 1", text, StringComparison.Ordinal);
        Assert.Contains("Production lot –", Spaced(text), StringComparison.Ordinal);
        Assert.Contains("No finding is recorded", text, StringComparison.Ordinal);
        Assert.Contains("Nothing has been signed yet.", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Weld runs", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_VeryLongSerial_PrintsAllOfItInTheIdentity()
    {
        var serial = string.Concat(Enumerable.Range(0, 400).Select(i => $"NR{i:0000}"));

        var pages = WrittenPdf.Pages(WrittenPdf.Bytes(WithSerial(serial)));

        var text = string.Concat(string.Concat(pages).Where(letter => !char.IsWhiteSpace(letter)));
        Assert.Contains(serial, text, StringComparison.Ordinal);
        Assert.Contains($"page 1 of {pages.Length}", pages[0], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("NR-\u202E7140", "NR-[U+202E]7140")]
    [InlineData("NR-\u00004", "NR-[U+0000]4")]
    [InlineData("NR-😀", "NR-[U+1F600]")]
    [InlineData("NR-\uD83D", "NR-")]
    [InlineData("<script>alert(1)</script>) Tj ET", "<script>alert(1)</script>) Tj ET")]
    public void Write_HostileSerial_PrintsItVisibly(string serial, string printed) =>
        Assert.Contains(printed, WrittenPdf.Text(WithSerial(serial)), StringComparison.Ordinal);

    [Theory]
    [InlineData("javascript:alert(1)")]
    [InlineData("file:///etc/hostname")]
    public void Write_AddressThatIsNoWebAddress_IsNoLink(string address)
    {
        var bytes = WrittenPdf.Bytes(SampleTraveler.Model() with { RecordAddress = address });
        using var pdf = PdfDocument.Open(bytes);

        Assert.Empty(pdf.GetPages().SelectMany(page => page.GetHyperlinks()));
        Assert.Contains(address, WrittenPdf.Pages(bytes)[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Write_WebAddress_IsALink()
    {
        using var pdf = PdfDocument.Open(WrittenPdf.Bytes(SampleTraveler.Model()));

        var link = Assert.Single(pdf.GetPages().SelectMany(page => page.GetHyperlinks()));
        Assert.Equal(SampleTraveler.Model().RecordAddress, link.Uri);
    }

    [Fact]
    public void Write_AddressTooLongForACode_PrintsTheText()
    {
        var address = "https://site.example/" + new string('a', 3000);

        var pages = WrittenPdf.Pages(
            WrittenPdf.Bytes(SampleTraveler.Model() with { RecordAddress = address })
        );

        Assert.Contains("https://site.example/", pages[0], StringComparison.Ordinal);
    }

    public static TheoryData<string, int> Damages =>
        new()
        {
            { "cut png", 1 },
            { "text", 1 },
            { "empty", 1 },
            { "png with a false size", 1 },
        };

    [Theory]
    [MemberData(nameof(Damages))]
    public void Write_DamagedPhotograph_SaysSoInItsPlace(string damage, int refusals)
    {
        var png = SamplePictures.Png(60, 40, (x, _) => (byte)x);
        byte[] content = damage switch
        {
            "cut png" => png[..40],
            "text" => "%PDF-1.7 renamed to .png"u8.ToArray(),
            "empty" => [],
            _ => [.. png[..16], 0, 0, 0x7F, 0xFF, 0, 0, 0x7F, 0xFF, .. png[24..]],
        };

        var text = WrittenPdf.Text(WithPhotograph(content));

        Assert.Equal(refusals, text.Split("The photograph is not printed").Length - 1);
        Assert.Contains("caption stays", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(null)]
    [InlineData((byte)3)]
    [InlineData((byte)6)]
    public void Write_Jpeg_IsPrintedUpright(byte? orientation)
    {
        using var pdf = PdfDocument.Open(
            WrittenPdf.Bytes(WithPhotograph(SamplePictures.Jpeg(orientation)))
        );

        var box = Assert.Single(pdf.GetPages().SelectMany(page => page.GetImages())).BoundingBox;
        var isUpright = Math.Abs(box.Rotation) % 180 > 45;
        Assert.Equal(orientation == 6, isUpright);
    }

    [Fact]
    public void Write_LogWithMissingAndEmptyChannels_DrawsTheRest()
    {
        var plot = new ProcessLogPlot
        {
            TimesInSeconds = [0, 1, 2],
            Channels =
            [
                new LogChannel("Force", "kN", [1, double.NaN, 2]),
                new LogChannel("Torque", "N·m", [double.NaN, double.NaN, double.NaN]),
                new LogChannel("Level", "mm", [5, 5, 5])
                {
                    Window = new ChannelWindow(null, null, null),
                },
                new LogChannel("Short", "mm", []),
            ],
            Phases = [new LogPhase("traverse", TimeSpan.FromSeconds(2), TimeSpan.FromSeconds(1))],
        };
        var run = SampleRuns.Run("WR-1", "J1", "1", 1) with { Chart = plot };

        var text = WrittenPdf.Text(SampleTraveler.Model() with { WeldRuns = [run] });

        Assert.Contains("Torque, N·m", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_InterruptedRun_MarksWhereItStopped()
    {
        var run = SampleRuns.Run("WR-1", "J1", "1", 2);
        var seam = run.Seam! with { Travelled = Length.FromMillimetres(120) };

        var text = WrittenPdf.Text(
            SampleTraveler.Model() with
            {
                WeldRuns = [run with { Seam = seam }],
            }
        );

        Assert.Contains("stopped", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_FromManyThreads_GivesEachTheSameText()
    {
        var expected = WrittenPdf.Text(SampleTraveler.Model());
        var texts = new string[12];

        Parallel.For(0, texts.Length, i => texts[i] = WrittenPdf.Text(SampleTraveler.Model()));

        Assert.All(texts, text => Assert.Equal(expected, text));
    }

    private static string Spaced(string text) =>
        string.Join(' ', text.Split([' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries));

    private static TravelerModel WithSerial(string serial)
    {
        var model = SampleTraveler.Model();
        return model with { Vessel = model.Vessel with { Serial = serial } };
    }

    private static TravelerModel WithPhotograph(byte[] content)
    {
        var photograph = new Photograph(content, "the caption stays", "a picture");
        return SampleTraveler.Model() with
        {
            Sections = [SampleTests.Section() with { Photographs = [photograph] }],
        };
    }
}
