using WeldTrace.Documents.Procedures;
using WeldTrace.Documents.Qualifications;
using WeldTrace.Documents.Tests.Samples;
using Xunit;

namespace WeldTrace.Documents.Tests.Qualifications;

public sealed class QualificationExporterTests
{
    private static readonly QualificationModel Sample = new()
    {
        Stamp = SampleTraveler.Stamp,
        RecordAddress = "https://weldtrace.caboraso.example/procedures/qualifications/9",
        Number = "WPQR 9",
        State = new StateMark("signed", MarkShape.Disc),
        Particulars = [new("Procedure", "WPS 12 rev C")],
        RangeSentence = "Covers lap joints in 6082-T6, 5 mm thick.",
        Range = [new("Parent material", "6082-T6", "as tested")],
        Procedure = [new ValueGroup("Clamping", [new("Clamps", "eight toe clamps")])],
        Pieces =
        [
            new PieceSheet("Piece 1, lowest heat input", new StateMark("welded", MarkShape.Disc))
            {
                Particulars = [new("Material", "L-7, 6082-T6, cast 4711")],
                AsRun = [new("Spindle speed", "rev/min", "779", "780", "781")],
            },
        ],
        Results =
        [
            new ResultRow(
                "1-T1",
                "transverse tensile",
                "50 to 100 mm from the start of the weld",
                new StateMark("fail", MarkShape.Cross)
            )
            {
                Sentence = "Tensile strength 140 MPa does not meet the limit.",
                Details = "Broke in: heat-affected zone",
            },
            new ResultRow(
                "1-T1 replacement 1",
                "transverse tensile",
                "beside it",
                new StateMark("pass", MarkShape.Disc)
            ),
        ],
        Sources = [new("RANGE-STRICT edition 1", "classification rules")],
        UncheckedLimits = ["RANGE-STRICT edition 1: classification rules"],
    };

    [Fact]
    public void Write_SignedRecord_KeepsTheOrderOfItsPartsWithTheFirstFailure()
    {
        var text = WrittenPdf.Text(Bytes(Sample));
        string[] order =
        [
            "Qualification record WPQR 9",
            "Unchecked limits",
            "Range of qualification",
            "Covers lap joints in 6082-T6",
            "Piece 1, lowest heat input",
            "cast 4711",
            "As actually run",
            "140 MPa",
            "heat-affected zone",
            "beside it",
            "eight toe clamps",
            "Nothing has been signed yet.",
            "not checked",
        ];

        var places = order.Select(part => text.IndexOf(part, StringComparison.Ordinal)).ToArray();

        Assert.DoesNotContain(-1, places);
        Assert.Equal(places.Order(), places);
    }

    [Fact]
    public void Write_OpenRecord_SaysWhatIsMissing()
    {
        var open = Sample with
        {
            RangeSentence = null,
            Missing = ["1-VT1, visual: no result yet."],
        };

        var text = WrittenPdf.Text(Bytes(open));

        Assert.Contains("Not complete", text, StringComparison.Ordinal);
        Assert.Contains("1-VT1, visual: no result yet.", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Range of qualification", text, StringComparison.Ordinal);
    }

    private static byte[] Bytes(QualificationModel model)
    {
        using var pdf = new MemoryStream();
        QualificationExporter.Write(model, pdf);
        return pdf.ToArray();
    }
}
