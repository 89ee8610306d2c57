using WeldTrace.Documents.RecordSheets;
using WeldTrace.Documents.Tests.Samples;
using Xunit;

namespace WeldTrace.Documents.Tests.RecordSheets;

public sealed class RecordSheetExporterTests
{
    [Fact]
    public void Write_Whole_PrintsEveryPartInItsOrder()
    {
        var bytes = WrittenPdf.Bytes(Model());
        SampleFolder.Keep("record-sheet.pdf", bytes);

        var text = WrittenPdf.Text(bytes);

        string[] expected =
        [
            "Finding F-00007",
            "closed",
            "NR10-0001",
            "What was found",
            "Cavity at the surface",
            "Containment",
            "NR10-0002",
            "held",
            "Quentin Hale",
            "I verified that the decision was",
        ];
        var at = -1;
        foreach (var words in expected)
        {
            var next = text.IndexOf(words, at + 1, StringComparison.Ordinal);
            Assert.True(next > at, $"'{words}' is missing or out of order in: {text}");
            at = next;
        }
    }

    [Fact]
    public void Write_WithANotice_PrintsIt_AndWithoutPartsStillASheet()
    {
        var model = Model() with
        {
            Parts = [],
            Signatures = [],
            Notices = ["This paper certifies nothing."],
        };

        Assert.Contains(
            "This paper certifies nothing.",
            WrittenPdf.Text(WrittenPdf.Bytes(model)),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Write_Twice_GivesTheSameText() =>
        Assert.Equal(
            WrittenPdf.Text(WrittenPdf.Bytes(Model())),
            WrittenPdf.Text(WrittenPdf.Bytes(Model()))
        );

    private static RecordSheetModel Model() =>
        new()
        {
            Stamp = SampleTraveler.Stamp,
            RecordAddress = "https://weld.example/findings/7",
            Title = "Finding F-00007",
            Subtitle = "Non-conformance report",
            State = new StateMark("closed", MarkShape.Disc),
            Particulars = [new("Vessel", "NR10-0001"), new("Place", null)],
            Parts =
            [
                new SheetPart("What was found") { Sentences = ["Cavity at the surface."] },
                new SheetPart("Containment")
                {
                    Table = new SheetTable(
                        [("Vessel", 20), ("In common", 40)],
                        [
                            new SheetRow(
                                ["NR10-0002", "same tool"],
                                new StateMark("held", MarkShape.Triangle)
                            ),
                            new SheetRow(["NR10-0003", null]),
                        ]
                    ),
                },
            ],
            Signatures =
            [
                new SignatureEntry(
                    "Quentin Hale",
                    "I verified that the decision was carried out.",
                    SampleTraveler.Stamp.PrintedAt,
                    "F-00007, version 3",
                    new string('a', 64)
                ),
            ],
        };
}
