using UglyToad.PdfPig;
using UglyToad.PdfPig.Outline;
using UglyToad.PdfPig.Tokens;
using WeldTrace.Documents.Tests.Samples;
using Xunit;

namespace WeldTrace.Documents.Tests.Traveler;

public sealed class TravelerExporterTests
{
    private static readonly string[] StandardTags =
    [
        "H1",
        "H2",
        "H3",
        "P",
        "Table",
        "TR",
        "TH",
        "TD",
        "L",
        "LI",
        "Figure",
        "Link",
    ];

    private static readonly byte[] Sample = WrittenPdf.Bytes(SampleTraveler.Model());

    [Fact]
    public void Write_SampleVessel_NumbersItsPages()
    {
        SampleFolder.Keep("traveler.pdf", Sample);
        var pages = WrittenPdf.Pages(Sample);

        Assert.InRange(pages.Length, 5, 12);
        Assert.All(
            pages,
            (text, index) =>
                Assert.Contains(
                    $"page {index + 1} of {pages.Length}",
                    text,
                    StringComparison.Ordinal
                )
        );
        Assert.All(
            pages,
            text =>
                Assert.Contains(
                    "Vessel traveler NR-0417 · Cabo Raso Float Works",
                    text,
                    StringComparison.Ordinal
                )
        );
        Assert.All(
            pages,
            text =>
                Assert.Contains(
                    "Printed 2031-05-20 16:45 (Europe/Lisbon) by Inês Falcão",
                    text,
                    StringComparison.Ordinal
                )
        );
        Assert.All(
            pages,
            text =>
                Assert.Contains(
                    $"Ledger signed 2031-05-20 16:00: 4213 entries, root {SampleTraveler.Stamp.Ledger!.RootHex}",
                    text,
                    StringComparison.Ordinal
                )
        );
    }

    [Fact]
    public void Write_SampleVessel_KeepsTheOrderOfItsParts()
    {
        var text = string.Join('\n', WrittenPdf.Pages(Sample));
        string[] order =
        [
            "Cabo Raso Float Works",
            "Vessel traveler NR-0417",
            "https://weldtrace.caboraso.example/vessels/",
            "Caution",
            "Local codes, the design authority and licensed practice decide.",
            "Unchecked limits",
            "Receive and identify components",
            "Components and material",
            "Joint J1: Shell to upper end",
            "Run WR-0881: joint J1, pass 1",
            "Leak test, LT-0311: pressure decay",
            "Pressure test, water, PT-0207",
            "Macro section, SX-0098",
            "Finding NCR-0052",
            "F8: time since cleaning",
            "5d3f9a1c77e0b248",
        ];

        var places = order.Select(part => text.IndexOf(part, StringComparison.Ordinal)).ToArray();

        Assert.DoesNotContain(-1, places);
        Assert.Equal(places.Order(), places);
    }

    [Theory]
    [InlineData("60.00 mm")]
    [InlineData("397.9 mm")]
    [InlineData("26.2 mm (20.0°)")]
    [InlineData("2 min 29 s")]
    [InlineData("800 rev/min")]
    [InlineData("200 mm/min")]
    [InlineData("retreating (RS)")]
    [InlineData("8.64 kN")]
    [InlineData("6.0214 bar")]
    [InlineData("20.31 °C")]
    [InlineData("180.6 bar")]
    [InlineData("mm²")]
    [InlineData("≤ 1.0 × 10⁻⁴ Pa·m³/s")]
    [InlineData("waiting · hold point")]
    [InlineData(
        "Corrected 2031-05-12 11:05 by Duarte Nogueira: Serial misread at issue. Replaced by EL-1197."
    )]
    [InlineData("disposition decided")]
    public void Write_SampleVessel_PrintsValueWithUnit(string expected) =>
        Assert.Contains(
            expected,
            string.Join('\n', WrittenPdf.Pages(Sample)),
            StringComparison.Ordinal
        );

    [Fact]
    public void Write_Run_PrintsItsChecksWithWhoAnswered()
    {
        var text = WrittenPdf.Text(SampleTraveler.Model());

        Assert.Contains(
            "Checks before welding, ISO 25239-5:2020 4.12.2",
            text,
            StringComparison.Ordinal
        );
        Assert.Contains("records, F2", text, StringComparison.Ordinal);
        Assert.Contains("Held as the procedure says.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_RecordHash_IsShortenedTo16Digits()
    {
        var text = string.Join('\n', WrittenPdf.Pages(Sample));

        Assert.Contains("5d3f9a1c77e0b248", text, StringComparison.Ordinal);
        Assert.DoesNotContain("5d3f9a1c77e0b2486", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_SameModelAtSameClock_GivesTheSameText() =>
        Assert.Equal(
            WrittenPdf.Pages(Sample),
            WrittenPdf.Pages(WrittenPdf.Bytes(SampleTraveler.Model()))
        );

    [Fact]
    public void Write_InchPoundSite_ConvertsTypedQuantities()
    {
        var model = SampleTraveler.Model();
        var text = WrittenPdf.Text(
            model with
            {
                Stamp = model.Stamp with { Units = UnitSystem.InchPound },
            }
        );

        // 60 mm / 25.4; 180 bar / 0.0689475729 (NIST SP 811 factors).
        Assert.Contains("2.362 in", text, StringComparison.Ordinal);
        Assert.Contains("2611 psi", text, StringComparison.Ordinal);
        Assert.DoesNotContain("60.00 mm", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_EveryFont_IsEmbeddedAsASubset()
    {
        using var pdf = PdfDocument.Open(Sample);
        var fonts = Fonts(pdf).ToArray();

        Assert.NotEmpty(fonts);
        Assert.All(fonts, font => Assert.Matches(@"^[A-Z]{6}\+Source Sans 3", Plain(font.Name)));
        Assert.All(fonts, font => Assert.True(font.IsEmbedded));
    }

    [Fact]
    public void Write_Parts_HaveBookmarks()
    {
        using var pdf = PdfDocument.Open(Sample);

        Assert.True(pdf.TryGetBookmarks(out var bookmarks));
        var titles = bookmarks.GetNodes().OfType<DocumentBookmarkNode>().ToArray();
        Assert.Equal("Vessel traveler NR-0417", titles[0].Title);
        Assert.Contains(titles, node => node is { Title: "Weld runs", Level: 1, PageNumber: > 1 });
        Assert.Contains(
            titles,
            node => node is { Title: "Leak test, LT-0318: immersion", Level: 2 }
        );
    }

    [Fact]
    public void Write_Structure_IsTaggedWithAlternativeTexts()
    {
        using var pdf = PdfDocument.Open(Sample);
        var catalog = pdf.Structure.Catalog.CatalogDictionary;
        var names = StructureNames(pdf).ToHashSet();

        Assert.Equal("en-GB", ((StringToken)catalog.Data["Lang"]).Data);
        Assert.Empty(StandardTags.Except(names));
        Assert.Contains(
            "Etched section with two overlapping",
            Alternatives(pdf),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Write_Metadata_IsThatOfTheStamp()
    {
        using var pdf = PdfDocument.Open(Sample);

        Assert.Equal("Vessel traveler NR-0417", pdf.Information.Title);
        Assert.Equal("Inês Falcão", pdf.Information.Author);
        Assert.Contains("20310520154500", pdf.Information.CreationDate, StringComparison.Ordinal);
    }

    private static string Plain(string name) => name.Replace("#20", " ", StringComparison.Ordinal);

    private static IEnumerable<(string Name, bool IsEmbedded)> Fonts(PdfDocument pdf) =>
        Dictionaries(pdf)
            .Where(entry => Name(entry, "Type") == "FontDescriptor")
            .Select(entry => (Name(entry, "FontName")!, entry.Data.ContainsKey("FontFile2")));

    private static IEnumerable<string> StructureNames(PdfDocument pdf) =>
        Dictionaries(pdf)
            .Where(entry => entry.Data.ContainsKey("P"))
            .Select(entry => Name(entry, "S"))
            .OfType<string>();

    private static string Alternatives(PdfDocument pdf) =>
        string.Join(
            '\n',
            Dictionaries(pdf)
                .Select(entry => entry.Data.GetValueOrDefault("Alt"))
                .OfType<StringToken>()
                .Select(token => token.Data)
        );

    private static string? Name(DictionaryToken entry, string key) =>
        (entry.Data.GetValueOrDefault(key) as NameToken)?.Data;

    private static IEnumerable<DictionaryToken> Dictionaries(PdfDocument pdf) =>
        pdf
            .Structure.CrossReferenceTable.ObjectOffsets.Keys.Select(key =>
                pdf.Structure.GetObject(key).Data
            )
            .OfType<DictionaryToken>();
}
